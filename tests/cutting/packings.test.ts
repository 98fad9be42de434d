import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { packingsOf } from '../../server/cutting/packings.ts';
import type { CutPlan, Kind } from '../../server/cutting/packings.ts';
import { quickPacking } from '../../server/cutting/quick-packing.ts';

fc.configureGlobal({ seed: 20 });

const side = fc.integer({ min: 1, max: 7 });
const kinds = fc.array(
  fc.record({
    width: side,
    height: side,
    turn: fc.boolean(),
    count: fc.integer({ min: 1, max: 2 }),
  }),
  { minLength: 1, maxLength: 3 },
);
const sheet = fc.integer({ min: 3, max: 10 });

describe('which pieces come out of one sheet', () => {
  it('agrees with trying every cut of every part (all selections of up to six pieces)', () => {
    fc.assert(
      fc.property(kinds, sheet, sheet, (some, width, height) => {
        const packings = packingsOf(some, width, height);
        for (const counts of selections(some))
          expect(packings.fits(counts)).toBe(byTrying(some, counts, width, height));
      }),
      { numRuns: 60 },
    );
  });

  it('gives cuts that hold exactly the pieces asked for, within the sheet', () => {
    fc.assert(
      fc.property(kinds, sheet, sheet, (some, width, height) => {
        const packings = packingsOf(some, width, height);
        for (const counts of selections(some)) {
          const plan = packings.cuts(counts);
          if (plan === null) continue;
          const found = some.map(() => 0);
          const need = needOf(plan, some, found);
          expect(found).toEqual(counts);
          expect(need.width <= width && need.height <= height).toBe(true);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('answers alike when only nearly full sheets are asked for', () => {
    fc.assert(
      fc.property(
        kinds,
        sheet,
        sheet,
        fc.integer({ min: 0, max: 20 }),
        (some, width, height, waste) => {
          const [all, few] = [
            packingsOf(some, width, height),
            packingsOf(some, width, height, waste),
          ];
          for (const counts of selections(some)) {
            const area = counts.reduce(
              (sum, count, at) => sum + count * some[at]!.width * some[at]!.height,
              0,
            );
            if (width * height - area <= waste) expect(few.fits(counts)).toBe(all.fits(counts));
          }
        },
      ),
      { numRuns: 200 },
    );
  });

  it('never finds by rules of thumb what cannot be', () => {
    fc.assert(
      fc.property(kinds, sheet, sheet, (some, width, height) => {
        const plan = quickPacking(some, width, height);
        if (plan === null) return;
        const found = some.map(() => 0);
        const need = needOf(plan, some, found);
        expect(found).toEqual(some.map((kind) => kind.count));
        expect(need.width <= width && need.height <= height).toBe(true);
      }),
    );
  });
});

/** Cuts the sheet at every place, both ways, and tries every way to share the pieces out. */
function byTrying(
  some: readonly Kind[],
  counts: readonly number[],
  width: number,
  height: number,
): boolean {
  const total = counts.reduce((sum, count) => sum + count, 0);
  if (total === 0) return true;
  const area = counts.reduce(
    (sum, count, at) => sum + count * some[at]!.width * some[at]!.height,
    0,
  );
  if (area > width * height) return false;
  if (total === 1) {
    const { width: w, height: h, turn } = some[counts.indexOf(1)]!;
    return (w <= width && h <= height) || (turn && h <= width && w <= height);
  }
  return [...selections(some.map((kind, at) => ({ ...kind, count: counts[at]! })))].some(
    (first) => {
      const own = first.reduce((sum, count) => sum + count, 0);
      if (own === 0 || own === total) return false;
      const second = counts.map((count, at) => count - first[at]!);
      return (
        range(1, width).some(
          (at) => byTrying(some, first, at, height) && byTrying(some, second, width - at, height),
        ) ||
        range(1, height).some(
          (at) => byTrying(some, first, width, at) && byTrying(some, second, width, height - at),
        )
      );
    },
  );
}

function selections(some: readonly Kind[]): number[][] {
  return some.reduce<number[][]>(
    (found, { count }) =>
      found.flatMap((counts) => range(0, count + 1).map((own) => [...counts, own])),
    [[]],
  );
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from) }, (_, index) => from + index);
}

function needOf(
  plan: CutPlan,
  some: readonly Kind[],
  found: number[],
): { width: number; height: number } {
  if ('kind' in plan) {
    found[plan.kind]!++;
    const { width, height, turn } = some[plan.kind]!;
    expect(plan.turned && !turn).toBe(false);
    return plan.turned ? { width: height, height: width } : { width, height };
  }
  const [a, b] = [needOf(plan.first, some, found), needOf(plan.second, some, found)];
  return plan.way === 'vertical'
    ? { width: a.width + b.width, height: Math.max(a.height, b.height) }
    : { width: Math.max(a.width, b.width), height: a.height + b.height };
}
