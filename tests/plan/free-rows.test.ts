/** Tables of cards are walked row by row, and rows are left out by the most that they hold: nothing may be lost by it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { topsOf, walkRows } from '../../server/plan/free/rows.ts';
import { wantedAt } from '../../server/plan/free/wanted.ts';

const DESIGNS = 4;

/** Few different values, so that there are equals. */
const worths = (papers: number): fc.Arbitrary<number[]> =>
  fc.array(fc.oneof(fc.constantFrom(0, 0.25, 0.5, 1), fc.constant(-Infinity)), {
    minLength: DESIGNS ** papers,
    maxLength: DESIGNS ** papers,
  });
const prices = fc.array(fc.constantFrom(0, 0.25, 0.5, 2), {
  minLength: DESIGNS,
  maxLength: DESIGNS,
});
const drawn = fc.integer({ min: 0, max: 3 }).chain((papers) =>
  fc.record({
    worth: worths(papers),
    price: prices,
    area: fc.array(fc.constantFrom(0.25, 0.5, 1), { minLength: papers, maxLength: papers }),
  }),
);

/** The designs of a cell, the last paper running fastest. */
function designsOf(cell: number, papers: number): number[] {
  return Array.from(
    { length: papers },
    (_, at) => Math.floor(cell / DESIGNS ** (papers - 1 - at)) % DESIGNS,
  );
}

describe('rows of a table', () => {
  test('come in order, each with what its papers cost but for the last, and with the most that it holds', () => {
    fc.assert(
      fc.property(drawn, ({ worth, price, area }) => {
        fc.pre(area.length > 0);
        const tops = topsOf(Float64Array.from(worth), DESIGNS);
        const seen: number[] = [];
        walkRows(area, Float64Array.from(price), (row, paid) => {
          seen.push(row);
          const heads = designsOf(row * DESIGNS, area.length).slice(0, -1);
          const costs = heads.reduce((sum, design, at) => sum + area[at]! * price[design]!, 0);
          expect(paid).toBeCloseTo(costs, 12);
          expect(tops[row]).toBe(Math.max(...worth.slice(row * DESIGNS, (row + 1) * DESIGNS)));
        });
        expect(seen).toEqual(Array.from(tops.keys()));
      }),
    );
  });

  test('give what a card wants most: the same as when every choice is looked at', () => {
    fc.assert(
      fc.property(drawn, fc.integer({ min: 1, max: 70 }), ({ worth, price, area }, most) => {
        const table = Float64Array.from(worth);
        const lots = area.map((_, at) => at);
        const card = { number: 1, lots, table, tops: topsOf(table, DESIGNS) };
        const copies = Array.from({ length: DESIGNS }, () => 1);
        const world = { cards: [card], area: Float64Array.from(area), copies };
        const [wanted] = wantedAt(world as never, Float64Array.from(price), most);
        const gain = (cell: number): number =>
          worth[cell]! -
          designsOf(cell, area.length).reduce(
            (sum, design, at) => sum + area[at]! * price[design]!,
            0,
          );
        const all = [...worth.keys()].filter((cell) => worth[cell]! > -Infinity);
        const best = all.sort((p, q) => gain(q) - gain(p) || p - q).slice(0, most);
        expect(wanted!.cells).toEqual(best.map((cell) => designsOf(cell, area.length)));
        expect(wanted!.worth).toEqual(best.map((cell) => worth[cell]));
      }),
    );
  });
});
