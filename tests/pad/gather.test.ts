import fc from 'fast-check';
import { expect, test } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import { gather } from '../../server/pad/gather.ts';
import type { Weighed } from '../../server/pad/gather.ts';

const colour = fc.record({
  lab: fc.record({
    l: fc.double({ min: 0, max: 100, noNaN: true }),
    a: fc.double({ min: -60, max: 60, noNaN: true }),
    b: fc.double({ min: -60, max: 60, noNaN: true }),
  }),
  weight: fc.double({ min: 0.01, max: 1, noNaN: true }),
});
const colours = fc
  .array(colour, { maxLength: 40 })
  .map((all) => all.map((one, at): Weighed<number> => ({ ...one, items: [at] })));

/** The same said plainly: every pair is asked for again after every joining. */
function plainly(all: readonly Weighed<number>[], limit: number): Weighed<number>[] {
  const groups = [...all];
  for (;;) {
    let best = { apart: limit, i: -1, j: -1 };
    for (let i = 0; i < groups.length; i++)
      for (let j = i + 1; j < groups.length; j++) {
        const apart = difference(groups[i]!.lab, groups[j]!.lab);
        if (apart < best.apart) best = { apart, i, j };
      }
    if (best.i < 0) return groups;
    const [p, q] = [groups[best.i]!, groups[best.j]!];
    const part = p.weight / (p.weight + q.weight);
    const mean = (of: 'l' | 'a' | 'b'): number => q.lab[of] + part * (p.lab[of] - q.lab[of]);
    groups[best.i] = {
      lab: { l: mean('l'), a: mean('a'), b: mean('b') },
      weight: p.weight + q.weight,
      items: [...p.items, ...q.items],
    };
    groups.splice(best.j, 1);
  }
}

test('gathers the closest first, as if every pair were looked at again each time', () => {
  fc.assert(
    fc.property(colours, fc.constantFrom(3, 9, 25), (all, limit) => {
      expect(gather(all, limit)).toEqual(plainly(all, limit));
    }),
    { numRuns: 60, seed: 20260504 },
  );
});

test('equal colours come together in the order in which they stand', () => {
  const lab = { l: 50, a: 10, b: 10 };
  const all = [0, 1, 2, 3].map((at) => ({ lab, weight: 1, items: [at] }));
  expect(gather(all, 9).map(({ items }) => items)).toEqual([[0, 1, 2, 3]]);
});
