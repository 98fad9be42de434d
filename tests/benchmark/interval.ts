import { chanceOf } from '../colour/drawn.ts';

/** How often something came out in one group of trials that share what they rest on: the checks on one table. */
export interface Counted {
  readonly part: number;
  readonly whole: number;
}

/**
 * The 95 % interval of a share, in percent.
 *
 * Trials of one group share a picture and its light, so single trials tell less than their number says: groups
 * are drawn again, 2000 times, and the middle 95 % of the shares kept. Where next to nothing came out that is too
 * narrow, so it is never narrower than Wilson's interval for single trials.
 *
 * Source      Efron (1979), Ann. Statist. 7(1), 1-26 (drawing again); Wilson (1927), J. Am. Stat. Assoc. 22(158),
 *             209-212, doi:10.1080/01621459.1927.10502953.
 */
export function intervalOf(groups: readonly Counted[]): readonly [low: number, high: number] {
  const sum = (of: readonly Counted[], key: keyof Counted): number =>
    of.reduce((total, group) => total + group[key], 0);
  const chance = chanceOf(1);
  const shares = Array.from({ length: 2000 }, () => {
    const drawn = groups.map(() => groups[Math.floor(groups.length * chance())]!);
    return sum(drawn, 'part') / Math.max(1, sum(drawn, 'whole'));
  }).sort((p, q) => p - q);
  const [least, most] = wilson(sum(groups, 'part'), sum(groups, 'whole'));
  return [100 * Math.min(shares[50]!, least), 100 * Math.max(shares[1949]!, most)];
}

/** Wilson's score interval at 95 %, in [0, 1]. */
export function wilson(part: number, whole: number): readonly [low: number, high: number] {
  const z = 1.959964;
  const p = part / whole;
  const middle = p + (z * z) / (2 * whole);
  const half = z * Math.sqrt((p * (1 - p)) / whole + (z * z) / (4 * whole * whole));
  const scale = 1 + (z * z) / whole;
  return [Math.max(0, (middle - half) / scale), Math.min(1, (middle + half) / scale)];
}
