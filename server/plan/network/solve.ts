import { tighten } from './bound.ts';
import { chance, changes, localSearch, randomChoice } from './local-search.ts';
import { HAIR, relaxed } from './network.ts';
import type { Limit, Network, Solution } from './network.ts';
import { exactWhereShort, rootOf, settle } from './node.ts';
import type { Node } from './node.ts';
import { createPool } from './pool.ts';
import type { Pool } from './pool.ts';

/** Random starts of the local search. */
const STARTS = 6;
/** Rounds of tightening at the root, one step down, and below. */
const ROUNDS = [24, 8, 4] as const;

/**
 * The best choice of a design for every slot, proven by branch and bound.
 *
 * Takes       the network; choices to start from (any number); a seed; a limit; how many of the best
 *             choices to keep.
 * Gives       the best choices found, and a bound that none but these passes: equal to the worth of the
 *             best when proven, else the largest bound of what was left unsearched.
 * Good up to  about eight slots of 48 designs in some seconds; beyond, the gap says how far.
 */
export function solve(
  network: Network,
  starts: readonly (readonly number[])[],
  seed: number,
  limit: Limit,
  keep = 1,
): Solution {
  const random = chance(seed);
  const begun = [...starts];
  for (let start = 0; start < STARTS; start++) {
    const choice = randomChoice(network, random);
    if (choice !== null) begun.push(choice);
  }
  const search: Search = { network, pool: createPool(network, keep), steps: 0, limit };
  const roughly = localSearch(relaxed(network), begun);
  const found = roughly === null ? null : localSearch(network, [roughly.choice, ...starts]);
  if (found !== null) {
    search.pool.offer(found.choice);
    if (keep > 1) for (const choice of changes(network, found.choice)) search.pool.offer(choice);
  }
  const open = branch(search, rootOf(network), 0);
  const best = search.pool.best();
  const value = best[0]?.value ?? -Infinity;
  const proven = open <= search.pool.least() + HAIR;
  return {
    choice: best[0]?.choice ?? null,
    value,
    bound: proven ? value : Math.max(value, open),
    proven,
    best,
    steps: search.steps,
  };
}

interface Search {
  readonly network: Network;
  readonly pool: Pool;
  steps: number;
  readonly limit: Limit;
}

/** Searches a node; gives the largest bound of what it had to leave unsearched, else -Infinity. */
function branch(search: Search, start: Node, depth: number): number {
  search.steps++;
  if (start.slots.length === 0) {
    search.pool.offer(start.settled);
    return -Infinity;
  }
  const rounds = ROUNDS[Math.min(depth, 2)]!;
  const least = search.pool.least();
  const first = tighten(start, least, rounds);
  const closer = exactWhereShort(first.node);
  const { node, bound } =
    closer === first.node || first.bound <= least + HAIR ? first : tighten(closer, least, rounds);
  if (bound <= least + HAIR) return -Infinity;
  if (spent(search)) return bound;
  const at = mostTelling(node);
  const order = [...node.live[at]!.keys()].sort(
    (a, b) => node.unary[at]![b]! - node.unary[at]![a]!,
  );
  let open = -Infinity;
  for (const value of order) {
    const child = settle(node, at, value);
    if (child === null) continue;
    if (spent(search)) open = Math.max(open, bound);
    else open = Math.max(open, Math.min(bound, branch(search, child, depth + 1)));
  }
  return open;
}

/**
 * The slot to settle next: the one with the fewest designs for how far they fall behind the best of
 * them, so that most of its branches end early.
 */
function mostTelling(node: Node): number {
  let best = 0;
  let most = -Infinity;
  for (let at = 0; at < node.live.length; at++) {
    const row = node.unary[at]!;
    const top = row.reduce((high, value) => Math.max(high, value), -Infinity);
    const behind = row.reduce((sum, value) => sum + top - value, 0) / row.length;
    const telling = (behind + 1e-12) / row.length;
    if (telling > most) {
      most = telling;
      best = at;
    }
  }
  return best;
}

function spent(search: Search): boolean {
  return 'steps' in search.limit ? search.steps >= search.limit.steps : search.limit.until();
}
