import { describe, expect, test } from 'vitest';
import { chance } from '../../server/plan/network/local-search.ts';
import { smallestClash } from '../../server/plan/smallest-clash.ts';

/** Wishes 0 to `count - 1`; they clash when all of some set are among them. */
function world(seed: number, count: number): (some: readonly number[]) => boolean {
  const random = chance(seed);
  const clashes = Array.from({ length: 5 }, () => {
    const size = 2 + Math.floor(4 * random());
    return Array.from({ length: size }, () => Math.floor(count * random()));
  });
  return (some) => !clashes.some((clash) => clash.every((wish) => some.includes(wish)));
}

function fewestByTryingAll(
  wishes: readonly number[],
  possible: (some: readonly number[]) => boolean,
): number {
  let least = Infinity;
  for (let chosen = 0; chosen < 2 ** wishes.length; chosen++) {
    const some = wishes.filter((_, at) => (chosen & (1 << at)) !== 0);
    if (!possible(some)) least = Math.min(least, some.length);
  }
  return least;
}

describe('the smallest set of wishes that clashes', () => {
  test.each(Array.from({ length: 12 }, (_, at) => 301 + at))(
    'is as small as trying all sets finds it (world %i)',
    (seed) => {
      const wishes = Array.from({ length: 11 }, (_, at) => at);
      const possible = world(seed, wishes.length);
      const clash = smallestClash(wishes, possible, 10_000);
      expect(possible(clash)).toBe(false);
      expect(clash).toHaveLength(fewestByTryingAll(wishes, possible));
      expect([...clash].sort((a, b) => a - b)).toEqual(clash);
    },
  );

  test('thinning alone would stop at a larger one', () => {
    // Taking wishes away one by one, the first first, loses 0 and 1 and stops at the four others.
    const possible = (some: readonly number[]): boolean =>
      ![
        [0, 1],
        [2, 3, 4, 5],
      ].some((clash) => clash.every((wish) => some.includes(wish)));
    expect(smallestClash([0, 1, 2, 3, 4, 5], possible, 10_000)).toEqual([0, 1]);
    expect(smallestClash([0, 1, 2, 3, 4, 5], possible, 7)).toEqual([2, 3, 4, 5]);
  });

  test('of two hundred wishes the pair that clashes is found', () => {
    const wishes = Array.from({ length: 200 }, (_, at) => at);
    const clash = (some: readonly number[], from: readonly number[]): boolean =>
      from.every((wish) => some.includes(wish));
    let asked = 0;
    const possible = (some: readonly number[]): boolean => {
      asked++;
      return !clash(some, [3, 150]) && !clash(some, [160, 170, 180]);
    };
    expect(smallestClash(wishes, possible, 6000)).toEqual([3, 150]);
    expect(asked).toBeLessThan(6000);
  });
});
