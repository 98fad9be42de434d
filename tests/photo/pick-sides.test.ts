import { describe, expect, it } from 'vitest';
import type { PhotoPoint } from '../../server/geometry/points.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import { pickSides } from '../../server/photo/pick-sides.ts';
import type { Weighed } from '../../server/photo/pick-sides.ts';
import { tableMetric } from '../../server/photo/table-metric.ts';

/** Upright or level lines, sides of a sheet that runs clockwise. */
const line = (from: PhotoPoint, to: PhotoPoint, worth: number): Weighed => ({
  from,
  to,
  worth,
  borne: 1,
  outside: 1,
});
const upper = (y: number, worth = 1): Weighed => line({ x: 0, y }, { x: 100, y }, worth);
const right = (x: number, worth = 1): Weighed => line({ x, y: 0 }, { x, y: 100 }, worth);
const lower = (y: number, worth = 1): Weighed => line({ x: 100, y }, { x: 0, y }, worth);
const left = (x: number, worth = 1): Weighed => line({ x, y: 100 }, { x, y: 0 }, worth);

/** Sheets of 100 pixels lie all over the picture. */
const metric = tableMetric(
  [0, 1, 2, 3, 4, 5].map((k) =>
    rectangleQuad<'photo'>(120 * (k % 3), 120 * Math.floor(k / 3), 100, 100),
  ),
  1,
);

describe('which edges make a sheet', () => {
  it('are those that are worth most, with the lead over the next', () => {
    const picked = pickSides(
      [[upper(0), upper(-6, 0.7)], [right(100)], [lower(100)], [left(0)]],
      null,
      1,
      0.004,
    )!;
    expect(picked.quad).toEqual(rectangleQuad<'photo'>(0, 0, 100, 100));
    expect(picked.lead).toBeCloseTo(0.3, 6);
  });

  it('are those of a sheet’s size, where the size is known', () => {
    const sides = [[upper(0)], [right(106, 1.2), right(100)], [lower(100)], [left(0)]];
    expect(pickSides(sides, null, 1, 0.004)!.quad[1]).toEqual({ x: 106, y: 0 });
    expect(pickSides(sides, metric, 1, 0.004)!.quad[1]).toEqual({ x: 100, y: 0 });
  });

  it('have a small lead only where two sets fit alike', () => {
    const moved = [
      [upper(0), upper(5)],
      [right(100)],
      [lower(100), lower(105)],
      [left(0)],
    ] as const;
    expect(pickSides(moved, metric, 1, 0.004)!.lead).toBeLessThan(0.05);
  });

  it('have no rival in a line that is the same but for a hair', () => {
    const twice = [[upper(0), upper(-0.3)], [right(100)], [lower(100)], [left(0)]];
    expect(pickSides(twice, metric, 1, 0.004)!.lead).toBeGreaterThan(1);
  });

  it('are none where the lines make no four corners', () => {
    expect(pickSides([[upper(0)], [upper(5)], [lower(100)], [left(0)]], null, 1, 0.004)).toBeNull();
  });
});
