import { Builds } from './builds.ts';
import type { Market } from './worth.ts';
import { worthOf } from './worth.ts';
import type { CutPlan } from '../../../server/cutting/packings.ts';

/** The most valuable sheet that was found. */
export interface BestSheet {
  readonly value: number;
  /** No sheet is worth more. */
  readonly bound: number;
  readonly proven: boolean;
  /** Null when nothing fits. */
  readonly cuts: CutPlan | null;
}

/** By how much of the bound the first, second, ... search may stay below it. */
const GAPS = [0, 0.002, 0.005, 0.01, 0.02, 0.04, 0.08, 0.16, 0.32, 1];

/**
 * The most valuable pieces that edge-to-edge cuts bring out of one sheet, each ware up to its number of
 * copies (the constrained two-dimensional guillotine knapsack).
 *
 * Takes  a sheet and wares in whole steps, and `until`, asked now and then: true ends the search.
 * Gives  the cuts, their value, and a bound that is equal to it when `proven`.
 * How    parts are put together from pieces, side by side and one above the other (Wang 1983, Oper.
 *        Res. 31, 573-586, doi:10.1287/opre.31.3.573), smallest first. A part is dropped when with all
 *        that can come around it, it stays below a threshold. The threshold starts at the bound and is
 *        lowered until a sheet reaches it: that sheet is the best.
 */
export function bestSheet(market: Market, until: () => boolean): BestSheet {
  const worth = worthOf(market);
  const top = worth.inside.at(-1)!;
  let best: { value: number; cuts: CutPlan | null } = { value: 0, cuts: null };
  let bound = top;
  for (const gap of GAPS) {
    const threshold = Math.max(Math.ceil(top * (1 - gap) - 1e-9), best.value + 1);
    const builds = new Builds(market, worth, threshold - 1);
    const ended = builds.search(until);
    if (builds.value > best.value) best = { value: builds.value, cuts: builds.cuts() };
    if (!ended) return { ...best, bound, proven: best.value >= bound };
    bound = Math.max(best.value, threshold - 1);
    if (best.value >= bound) return { ...best, bound, proven: true };
  }
  return { ...best, bound, proven: best.value >= bound };
}
