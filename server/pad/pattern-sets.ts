import { SAME_PATTERN, sameness } from '../pattern/sameness.ts';
import type { Side } from './pad.ts';

/**
 * The sides that show one pattern in several colours.
 *
 * Takes       the sides of a pad.
 * Gives       sets of two or more side ids, in the order of the sides; no side stands in two sets.
 */
export function patternSetsOf(sides: readonly Pick<Side, 'id' | 'pattern'>[]): string[][] {
  const sets: Pick<Side, 'id' | 'pattern'>[][] = [];
  for (const side of sides) {
    const home = sets.find(
      (set) => mean(set.map((other) => sameness(side.pattern, other.pattern))) >= SAME_PATTERN,
    );
    if (home === undefined) sets.push([side]);
    else home.push(side);
  }
  return sets.filter((set) => set.length > 1).map((set) => set.map(({ id }) => id));
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
