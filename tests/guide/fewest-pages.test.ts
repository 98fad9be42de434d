import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fewestPages, setDown } from '../../server/guide/fewest-pages.ts';
import type { Way } from '../../server/guide/fewest-pages.ts';

const way = (height: number, worth = 0): Way => ({ height, worth, draw: () => [] });
const ROOM = 100;
const GAP = 5;

const things = fc.array(
  fc.array(
    fc.record({ height: fc.integer({ min: 10, max: 110 }), worth: fc.integer({ min: 0, max: 9 }) }),
    { minLength: 1, maxLength: 3 },
  ),
  { maxLength: 7 },
);

/** By trying out every way to part a row of things into pages; at most four fit a page of 100 then, as none is lower than 22. */
function fewestByTrying(lowest: readonly number[]): number {
  if (lowest.length === 0) return 0;
  const counts = lowest.flatMap((_, at) => {
    const first = lowest.slice(0, at + 1);
    const high = first.reduce((sum, height) => sum + height, 0) + GAP * at;
    return at > 0 && high > ROOM ? [] : [1 + fewestByTrying(lowest.slice(at + 1))];
  });
  return Math.min(...counts);
}

describe('things on pages', () => {
  test('all of them stand there once, in their order, and none stands over the end of its page', () => {
    fc.assert(
      fc.property(things, (all) => {
        const pages = fewestPages(
          all.map((ways) => ways.map(({ height, worth }) => way(height, worth))),
          ROOM,
          GAP,
        );
        expect(pages.flat().map(({ at }) => at)).toEqual(all.map((_, at) => at));
        for (const page of pages) {
          const high = page.reduce((sum, { way }) => sum + way.height, 0);
          if (page.length > 1) expect(high + GAP * (page.length - 1)).toBeLessThanOrEqual(ROOM);
        }
      }),
    );
  });

  test('no row of pages is shorter', () => {
    const high = fc.array(fc.integer({ min: 22, max: 110 }), { maxLength: 8 });
    fc.assert(
      fc.property(high, (heights) => {
        const pages = fewestPages(
          heights.map((height) => [way(height)]),
          ROOM,
          GAP,
        );
        expect(pages).toHaveLength(fewestByTrying(heights));
      }),
    );
  });

  test('what could be large on one page or small on one with others is small only where that spares a page', () => {
    const large = way(90, 2);
    const small = way(40, 1);
    const heights = (count: number): number[][] =>
      fewestPages(Array<Way[]>(count).fill([large, small]), ROOM, GAP).map((page) =>
        page.map(({ way }) => way.height),
      );
    expect(heights(1)).toEqual([[90]]);
    expect(heights(2)).toEqual([[40, 40]]);
    expect(heights(3).flat().toSorted()).toEqual([40, 40, 90]);
  });

  test('what is higher than a page stands alone, in its lowest way', () => {
    const pages = fewestPages([[way(10)], [way(140, 1), way(120)], [way(10)]], ROOM, GAP);
    expect(pages.map((page) => page.map(({ way }) => way.height))).toEqual([[10], [120], [10]]);
  });

  test('room to spare is air between the blocks, but not so much that they float', () => {
    const page = [30, 30].map((height, at) => ({ at, way: way(height) }));
    const tops = (room: number): unknown[] =>
      setDown(page, 20, room, GAP).map((mark) => mark.kind === 'group' && mark.y);
    expect(tops(65)).toEqual([20, 55]);
    expect(tops(70)).toEqual([20, 60]);
    expect(tops(300)).toEqual([20, 64]);
  });
});
