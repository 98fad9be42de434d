import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestSheet } from '../benchmark/knapsack/best-sheet.ts';
import type { Market, Ware } from '../benchmark/knapsack/worth.ts';
import { packingsOf } from '../../server/cutting/packings.ts';
import type { CutPlan } from '../../server/cutting/packings.ts';

fc.configureGlobal({ seed: 20 });

/** Rows of width, height, value, copies. */
function wares(...rows: readonly (readonly [number, number, number, number])[]): Ware[] {
  return rows.map(([width, height, value, most]) => ({ width, height, value, most }));
}

/** Beasley (1985), J. Oper. Res. Soc. 36, 297-306, doi:10.1057/jors.1985.51: gcut1, value is area. */
const GCUT1: Market = {
  width: 250,
  height: 250,
  wares: wares(
    ...(
      [
        [167, 184],
        [114, 118],
        [167, 152],
        [83, 140],
        [70, 86],
        [143, 166],
        [120, 160],
        [66, 148],
        [87, 141],
        [69, 165],
      ] as const
    ).map(([w, h]) => [w, h, w * h, 1] as const),
  ),
};

/** Christofides, Whitlock (1977), Oper. Res. 25, 30-44, doi:10.1287/opre.25.1.30: cgcut1. */
const CGCUT1: Market = {
  width: 15,
  height: 10,
  wares: wares(
    [8, 4, 66, 2],
    [3, 7, 35, 1],
    [8, 2, 24, 3],
    [3, 4, 17, 5],
    [3, 3, 11, 2],
    [3, 2, 8, 2],
    [2, 1, 2, 1],
  ),
};

describe('the most valuable sheet', () => {
  it.each([
    ['gcut1', GCUT1, 48368],
    ['cgcut1', CGCUT1, 244],
  ])('of %s is worth its published optimum', (_, market, optimum) => {
    const best = bestSheet(market, () => false);
    expect(best).toMatchObject({ value: optimum, bound: optimum, proven: true });
    expect(valueOf(best.cuts!, market)).toBe(optimum);
  });

  it('agrees with trying every selection of pieces', () => {
    const side = fc.integer({ min: 1, max: 12 });
    const market = fc.record({
      width: fc.integer({ min: 12, max: 22 }),
      height: fc.integer({ min: 12, max: 22 }),
      wares: fc.array(
        fc.record({
          width: side,
          height: side,
          value: fc.integer({ min: 1, max: 60 }),
          most: fc.integer({ min: 1, max: 2 }),
        }),
        { minLength: 1, maxLength: 5 },
      ),
    });
    fc.assert(
      fc.property(market, (some) => {
        const best = bestSheet(some, () => false);
        expect(best).toMatchObject({ value: byTrying(some), proven: true });
        if (best.cuts !== null) expect(valueOf(best.cuts, some)).toBe(best.value);
      }),
      { numRuns: 150 },
    );
  });

  it('says that it is not proven when it was stopped', () => {
    const stopped = bestSheet(GCUT1, () => true);
    expect(stopped.proven).toBe(false);
    expect(stopped.bound).toBeGreaterThanOrEqual(48368);
  });

  it('is empty when nothing fits', () => {
    const market = { width: 3, height: 3, wares: wares([4, 1, 9, 1]) };
    expect(bestSheet(market, () => false)).toEqual({
      value: 0,
      bound: 0,
      proven: true,
      cuts: null,
    });
  });
});

/** Value of the pieces of a plan, after checking copies and room. */
function valueOf(plan: CutPlan, { width, height, wares: some }: Market): number {
  const used = some.map(() => 0);
  const need = (part: CutPlan): { width: number; height: number } => {
    if ('kind' in part) {
      used[part.kind]!++;
      return some[part.kind]!;
    }
    const [a, b] = [need(part.first), need(part.second)];
    return part.way === 'vertical'
      ? { width: a.width + b.width, height: Math.max(a.height, b.height) }
      : { width: Math.max(a.width, b.width), height: a.height + b.height };
  };
  const room = need(plan);
  expect(room.width <= width && room.height <= height).toBe(true);
  used.forEach((count, ware) => expect(count).toBeLessThanOrEqual(some[ware]!.most));
  return used.reduce((sum, count, ware) => sum + count * some[ware]!.value, 0);
}

function byTrying({ width, height, wares: some }: Market): number {
  const packings = packingsOf(
    some.map((ware) => ({ ...ware, turn: false, count: ware.most })),
    width,
    height,
  );
  let most = 0;
  const counts = some.map(() => 0);
  const search = (ware: number, value: number): void => {
    if (ware === some.length) {
      if (value > most && packings.fits(counts)) most = value;
      return;
    }
    for (let count = 0; count <= some[ware]!.most; count++) {
      counts[ware] = count;
      search(ware + 1, value + count * some[ware]!.value);
    }
    counts[ware] = 0;
  };
  search(0, 0);
  return most;
}
