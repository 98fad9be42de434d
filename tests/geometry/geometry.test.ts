import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  applyHomography,
  homographyOf,
  inverseHomography,
} from '../../server/geometry/homography.ts';
import type { Point, Quad } from '../../server/geometry/points.ts';
import { centroid, contains, polygonArea, signedArea } from '../../server/geometry/polygon.ts';
import { inReadingOrder, isConvex, rectangleQuad, sidesOf } from '../../server/geometry/quad.ts';

fc.configureGlobal({ seed: 20 });

/** A photo of a sheet: a rectangle whose corners have moved by up to a fifth of its sides. */
const seen = fc
  .record({
    width: fc.integer({ min: 200, max: 4000 }),
    height: fc.integer({ min: 200, max: 4000 }),
    moved: fc.array(fc.double({ min: -0.2, max: 0.2, noNaN: true }), {
      minLength: 8,
      maxLength: 8,
    }),
    x: fc.integer({ min: -2000, max: 2000 }),
    y: fc.integer({ min: -2000, max: 2000 }),
  })
  .map(({ width, height, moved, x, y }) => {
    const corners = rectangleQuad<'photo'>(x, y, width, height);
    return corners.map((p, index) => ({
      x: p.x + moved[2 * index]! * width,
      y: p.y + moved[2 * index + 1]! * height,
    })) as unknown as Quad<'photo'>;
  });
const sheet = rectangleQuad<'sheet'>(0, 0, 152.4, 152.4);
const onSheet = fc.record({
  x: fc.double({ min: 0, max: 152.4, noNaN: true }),
  y: fc.double({ min: 0, max: 152.4, noNaN: true }),
});
const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });

describe('homography of four corners', () => {
  it('takes each corner to its corner', () => {
    fc.assert(
      fc.property(seen, (photo) => {
        const map = homographyOf(photo, sheet);
        photo.forEach((corner, index) => close(applyHomography(map, corner), sheet[index]!, 1e-6));
      }),
    );
  });

  it('goes there and back', () => {
    fc.assert(
      fc.property(seen, onSheet, (photo, point) => {
        const map = homographyOf(sheet, photo);
        close(applyHomography(inverseHomography(map), applyHomography(map, point)), point, 1e-6);
      }),
    );
  });

  it('does not mind how the photo is turned and scaled', () => {
    fc.assert(
      fc.property(
        seen,
        onSheet,
        angle,
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (photo, point, by, scale) => {
          const turnedPhoto = photo.map((p) => turned(p, by, scale)) as unknown as Quad<'photo'>;
          const there = turned(applyHomography(homographyOf(sheet, photo), point), by, scale);
          close(applyHomography(homographyOf(sheet, turnedPhoto), point), there, 1e-5);
        },
      ),
    );
  });

  it('keeps straight lines straight', () => {
    fc.assert(
      fc.property(seen, onSheet, onSheet, (photo, p, q) => {
        const map = homographyOf(sheet, photo);
        const middle = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
        const [a, b, c] = [p, middle, q].map((point) => applyHomography(map, point));
        expect(polygonArea([a!, b!, c!])).toBeLessThan(1e-4);
      }),
    );
  });

  it('refuses corners in line and says what to do', () => {
    const flat: Quad<'photo'> = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 20, y: 0 },
      { x: 0, y: 10 },
    ];
    expect(() => homographyOf(flat, sheet)).toThrow(/no three of them on one line/);
  });
});

describe('polygons', () => {
  it('measures a square of 2 as 4, clockwise above 0', () => {
    const square = rectangleQuad(3, 5, 2, 2);
    expect(signedArea(square)).toBe(4);
    expect(signedArea([...square].reverse())).toBe(-4);
    expect(centroid(square)).toEqual({ x: 4, y: 6 });
  });

  it('balances a triangle where its medians meet, at the mean of its corners (Euclid I; Archimedes)', () => {
    expect(
      centroid([
        { x: 0, y: 0 },
        { x: 9, y: 0 },
        { x: 0, y: 6 },
      ]),
    ).toEqual({ x: 3, y: 2 });
  });

  it('gives the same area and the moved centroid however the polygon is turned', () => {
    fc.assert(
      fc.property(seen, angle, (quad, by) => {
        const spun = quad.map((p) => turned(p, by, 1));
        expect(polygonArea(spun) / polygonArea(quad)).toBeCloseTo(1, 9);
        close(centroid(spun), turned(centroid(quad), by, 1), 1e-4);
      }),
    );
  });

  it('tells inside from outside', () => {
    const arrow = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 6, y: 5 },
      { x: 10, y: 10 },
      { x: 0, y: 10 },
    ];
    expect(contains(arrow, { x: 5, y: 5 })).toBe(true);
    expect(contains(arrow, { x: 8, y: 5 })).toBe(false);
    expect(contains(arrow, { x: -1, y: 5 })).toBe(false);
  });
});

describe('quads', () => {
  it('knows a photographed sheet is convex, a dart and a bow tie are not', () => {
    fc.assert(
      fc.property(seen, (quad) => {
        expect(isConvex(quad)).toBe(true);
      }),
    );
    expect(
      isConvex([
        { x: 0, y: 0 },
        { x: 10, y: 0 },
        { x: 2, y: 2 },
        { x: 0, y: 10 },
      ]),
    ).toBe(false);
    expect(
      isConvex([
        { x: 0, y: 0 },
        { x: 10, y: 10 },
        { x: 10, y: 0 },
        { x: 0, y: 10 },
      ]),
    ).toBe(false);
  });

  it('sorts shuffled corners clockwise from the upper left', () => {
    const [a, b, c, d] = rectangleQuad(1, 2, 30, 40);
    fc.assert(
      fc.property(fc.shuffledSubarray([a, b, c, d], { minLength: 4 }), (corners) => {
        expect(inReadingOrder(corners as unknown as Quad<'photo'>)).toEqual([a, b, c, d]);
      }),
    );
  });

  it('measures its sides', () => {
    expect(sidesOf(rectangleQuad(0, 0, 3, 4))).toEqual([3, 4, 3, 4]);
  });
});

function turned(p: Point<string>, by: number, scale: number): { x: number; y: number } {
  const [cos, sin] = [Math.cos(by), Math.sin(by)];
  return { x: scale * (cos * p.x - sin * p.y), y: scale * (sin * p.x + cos * p.y) };
}

function close(a: Point<string>, b: Point<string>, within: number): void {
  expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(within);
}
