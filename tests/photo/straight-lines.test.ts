import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PhotoPoint, Quad } from '../../server/geometry/points.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import { edgesOf, supportOf } from '../../server/photo/edges.ts';
import { quadsFromLines } from '../../server/photo/sheets-from-lines.ts';
import type { Judge, SidePair } from '../../server/photo/sheets-from-lines.ts';
import { borneAlong, straightLines } from '../../server/photo/straight-lines.ts';
import { drawnLab } from './drawn-lab.ts';

const [WIDTH, HEIGHT] = [260, 240];
const GREY = [60, 0, 0] as const;
const STEEP = 1;

/** A square of 100 pixels, turned about the middle of the picture. */
function square(degrees: number): Quad<'photo'> {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return rectangleQuad<'photo'>(-50, -50, 100, 100).map(({ x, y }) => ({
    x: 130 + cos * x - sin * y,
    y: 120 + sin * x + cos * y,
  })) as unknown as Quad<'photo'>;
}

const edgesFor = (corners: Quad<'photo'>): ReturnType<typeof edgesOf> =>
  edgesOf(drawnLab(WIDTH, HEIGHT, GREY, [{ corners, colour: [52, 6, 0] }]), STEEP);

/** Sheets of this size, of which none is known yet, on a table of which nothing is bare. */
const judgeOf = (size: SidePair): Judge => ({
  sizeAt: () => size,
  isTaken: () => false,
  bareIn: () => 0,
  agrees: () => 1,
});

/** How far a place lies from the side of a quad, and from its end. */
function offLine({ x, y }: PhotoPoint, from: PhotoPoint, to: PhotoPoint): number {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return Math.abs((x - from.x) * (to.y - from.y) - (y - from.y) * (to.x - from.x)) / length;
}

describe.each([0, 7, -23, 41])('a square turned by %i degrees', (degrees) => {
  const corners = square(degrees);
  const edges = edgesFor(corners);

  it('bears its sides out by edges, and no line through its middle', () => {
    corners.forEach((from, side) => {
      expect(supportOf(edges, from, corners[(side + 1) % 4]!, 1)).toBeGreaterThan(0.85);
    });
    expect(supportOf(edges, corners[0], corners[2], 1)).toBeLessThan(0.2);
  });

  it('shows a straight line for each side, a pixel off at most, borne out most of the way', () => {
    const lines = straightLines(edges, 50);
    corners.forEach((from, side) => {
      const to = corners[(side + 1) % 4]!;
      const own = lines.find(
        (line) =>
          offLine(line, from, to) < 1 &&
          offLine({ x: line.x + 40 * line.dx, y: line.y + 40 * line.dy }, from, to) < 1.5,
      );
      expect(own).toBeDefined();
      const along = ({ x, y }: PhotoPoint): number =>
        (x - own!.x) * own!.dx + (y - own!.y) * own!.dy;
      expect(borneAlong(own!, along(from), along(to))).toBeGreaterThan(0.6);
    });
  });

  it('is put together from its lines', () => {
    const [best] = quadsFromLines(
      straightLines(edges, 50),
      edges,
      judgeOf({ width: 101, height: 99 }),
    );
    expect(best).toBeDefined();
    for (const { x, y } of corners)
      expect(
        Math.min(...best!.corners.map((corner) => Math.hypot(corner.x - x, corner.y - y))),
      ).toBeLessThan(3);
  });
});

describe('lines', () => {
  it('are none in noise alone', () => {
    expect(straightLines(edgesOf(drawnLab(WIDTH, HEIGHT, GREY, []), STEEP), 50)).toEqual([]);
  });

  it('bear out no more of a line than was asked for, or say that they do not', () => {
    const [from, , to] = square(7);
    const edges = edgesFor(square(7));
    const corners = square(7);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(3), (wanted, side) => {
        for (const [p, q] of [
          [corners[side]!, corners[(side + 1) % 4]!],
          [from, to],
        ] as const) {
          const whole = supportOf(edges, p, q, 1);
          expect(supportOf(edges, p, q, 1, wanted)).toBe(whole < wanted ? -1 : whole);
        }
      }),
    );
  });

  it('are not put together where a sheet is known, nor where the table lies bare', () => {
    const edges = edgesFor(square(7));
    const lines = straightLines(edges, 50);
    const judge = judgeOf({ width: 101, height: 99 });
    expect(quadsFromLines(lines, edges, { ...judge, isTaken: () => true })).toEqual([]);
    expect(quadsFromLines(lines, edges, { ...judge, bareIn: () => 1, agrees: () => 0.5 })).toEqual(
      [],
    );
  });

  it('make no sheet of another size', () => {
    const edges = edgesFor(square(7));
    const quads = quadsFromLines(
      straightLines(edges, 50),
      edges,
      judgeOf({ width: 140, height: 140 }),
    );
    expect(quads).toEqual([]);
  });

  it('go on where a stripe interrupts them', () => {
    const stripe = rectangleQuad<'photo'>(0, 110, WIDTH, 16);
    const edges = edgesOf(
      drawnLab(WIDTH, HEIGHT, GREY, [
        { corners: square(0), colour: [52, 6, 0] },
        { corners: stripe, colour: GREY },
      ]),
      STEEP,
    );
    const upright = straightLines(edges, 50).filter(({ dy }) => Math.abs(dy) > 0.98);
    expect(upright).toHaveLength(2);
    for (const { pieces } of upright) expect(pieces).toHaveLength(2);
  });
});
