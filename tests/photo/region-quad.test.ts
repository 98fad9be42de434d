import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains } from '../../server/geometry/polygon.ts';
import type { PhotoPoint } from '../../server/geometry/points.ts';
import { quadOf } from '../../server/photo/region-quad.ts';
import { regionsOf } from '../../server/photo/regions.ts';
import type { Mask, Region } from '../../server/photo/regions.ts';

const SIDE = 160;

function drawn(isThere: (place: PhotoPoint) => boolean): Region {
  const of = new Uint8Array(SIDE * SIDE);
  for (let y = 0; y < SIDE; y++)
    for (let x = 0; x < SIDE; x++) if (isThere({ x: x + 0.5, y: y + 0.5 })) of[y * SIDE + x] = 1;
  const mask: Mask = { width: SIDE, height: SIDE, of };
  return regionsOf(mask, 1)[0]!;
}

/** A square of 90 pixels about the middle of the picture. */
function square(degrees: number): readonly PhotoPoint[] {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [45 * Math.cos(angle), 45 * Math.sin(angle)];
  return [
    { x: 80 - cos + sin, y: 80 - sin - cos },
    { x: 80 + cos + sin, y: 80 + sin - cos },
    { x: 80 + cos - sin, y: 80 + sin + cos },
    { x: 80 - cos - sin, y: 80 - sin + cos },
  ];
}

const furthest = (found: readonly PhotoPoint[], wanted: readonly PhotoPoint[]): number =>
  Math.max(
    ...wanted.map(({ x, y }) => Math.min(...found.map((p) => Math.hypot(p.x - x, p.y - y)))),
  );

describe('the four corners of a region', () => {
  it('are those of a square, turned in any way, to a pixel or two', () => {
    fc.assert(
      fc.property(fc.double({ min: -45, max: 45, noNaN: true }), (degrees) => {
        const corners = square(degrees);
        const { corners: found, fill } = quadOf(
          drawn((place) => contains(corners, place)),
          SIDE,
        )!;
        expect(furthest(found, corners)).toBeLessThan(2.5);
        expect(fill).toBeGreaterThan(0.94);
        expect(fill).toBeLessThan(1.03);
      }),
      { numRuns: 30 },
    );
  });

  it('are kept when a corner is torn off, where the sides would meet', () => {
    const corners = square(10);
    const torn = drawn(
      (place) =>
        contains(corners, place) &&
        Math.hypot(place.x - corners[1]!.x, place.y - corners[1]!.y) > 9,
    );
    expect(furthest(quadOf(torn, SIDE)!.corners, corners)).toBeLessThan(3);
  });

  it('fill little of an L, and less than all of a round thing', () => {
    const l = drawn(({ x, y }) => x > 30 && y > 30 && x < 130 && y < 130 && (x < 70 || y < 70));
    expect(quadOf(l, SIDE)!.fill).toBeLessThan(0.8);
    const round = drawn(({ x, y }) => Math.hypot(x - 80, y - 80) < 50);
    expect(quadOf(round, SIDE)!.fill).toBeLessThan(0.92);
  });
});
