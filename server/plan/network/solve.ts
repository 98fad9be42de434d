import { cellsOfCloser, closerNetwork } from './closer.ts';
import { chance, goodChoices } from './local-search.ts';
import { HAIR } from './network.ts';
import type { Limit, Network, Solution } from './network.ts';
import { createPolisher } from './polish.ts';
import { createPool } from './pool.ts';
import { settle, writtenOut } from './narrowed.ts';
import { relaxationOf } from './relaxation.ts';
import type { Relaxation } from './relaxation.ts';
import { rulesOf, symmetriesOf } from './symmetry.ts';
import { spentBy } from './task.ts';
import type { Task } from './task.ts';
import { tighten } from './tighten.ts';
import { walkerOf } from './walk.ts';
import { wideWorth } from './wide-worth.ts';

/** Rounds of tightening at the root, and below. */
const ROUNDS = [12, 3] as const;
/** A walk may take as many nodes as the next tightening costs: some nodes, and one for so many cells. */
const NODES = 2000;
const CELLS_A_NODE = 200;
/** Kicks of the best plan whenever a walk did not finish: what is hard to prove may not be the best yet. */
const KICKS = 4;

/**
 * The best choice of a design for every slot, proven by branch and bound.
 *
 * Takes       the network; choices to start from (any number); a seed; a limit; how many of the best
 *             choices to keep.
 * Gives       the best choices found that differ by more than an exchange of slots that are alike, and
 *             a bound that none but these passes: equal to the worth of the best when proven, else the
 *             largest bound of what was left unsearched.
 * Good up to  eight slots of 48 designs, or twelve of twelve, in about a second; with twenty slots and
 *             more a gap of some per cent can stay, and is given.
 * Method      local search for first plans; one thorough tightening of the whole network; from there a
 *             walk through each design of one slot, which only takes up the tightened tables; a part that
 *             the walk does not finish soon is settled, tightened anew and branched on in turn. A search that
 *             takes long is begun anew on closer tables of the cards of many papers.
 */
export function solve(
  network: Network,
  starts: readonly (readonly number[])[],
  seed: number,
  limit: Limit,
  keep = 1,
): Solution {
  const symmetries = symmetriesOf(network);
  const pool = createPool(network, keep, symmetries);
  const polisher = createPolisher(network);
  const random = chance(seed);
  const spent = spentBy(limit, () => task.steps);
  const enough = looseSteps(network);
  let loose = true;
  const task: Task = {
    pool,
    wides: network.wides.map(wideWorth),
    rules: rulesOf(symmetries),
    steps: 0,
    spent: () => spent() || (loose && task.steps >= enough),
    kick: () => {
      for (let turn = 0; turn < KICKS && !task.spent(); turn++) {
        const best = pool.best()[0];
        if (best !== undefined) pool.offer(polisher.kick(best.choice, random));
      }
    },
  };
  const root = relaxationOf(network);
  for (const choice of goodChoices(root, starts, random, spent)) {
    pool.offer(choice);
    pool.offer(polisher.polish(choice));
  }
  const isProven = (most: number): boolean => most <= pool.least() + HAIR;
  let open = branch(task, root, 0);
  if (!isProven(open) && !spent()) {
    const closer = closerNetwork(network);
    task.wides = closer.wides.map(wideWorth);
    loose = false;
    open = Math.min(open, branch(task, relaxationOf(closer), 0));
  }
  const best = pool.best();
  const value = best[0]?.value ?? -Infinity;
  const proven = isProven(open);
  return {
    choice: best[0]?.choice ?? null,
    value,
    bound: proven ? value : Math.max(value, open),
    proven,
    best,
    steps: task.steps,
  };
}

/**
 * With cards of many papers the search begins on loose tables, which suffice for most networks; it takes so
 * many nodes as the making of closer ones costs, and is then begun anew on these.
 */
function looseSteps(network: Network): number {
  const cells = cellsOfCloser(network);
  return cells === 0 ? Infinity : cells / CELLS_A_STEP;
}

/** Cells of closer tables that are made in the time of one node. */
const CELLS_A_STEP = 60;

/** Searches a relaxation; gives the largest bound of what it had to leave unsearched, else -Infinity. */
function branch(task: Task, start: Relaxation, depth: number): number {
  task.steps++;
  if (start.slots.length === 0) {
    task.pool.offer(start.settled);
    return -Infinity;
  }
  const least = (): number => task.pool.least() + HAIR;
  const { relaxation, bound } = tighten(start, task.pool.least(), ROUNDS[Math.min(depth, 1)]!);
  if (bound <= least()) return -Infinity;
  if (task.spent()) return bound;
  const walk = walkerOf(writtenOut(relaxation), task);
  const at = mostTelling(relaxation);
  const row = relaxation.unary[at]!;
  const order = [...row.keys()].sort((a, b) => row[b]! - row[a]!);
  const cells = relaxation.triples.reduce((sum, { data }) => sum + data.length, 0);
  let open = -Infinity;
  for (const place of order) {
    const most = bound + row[place]!;
    if (most <= least()) break;
    if (task.spent()) return Math.max(open, most);
    let left = Math.min(most, walk(NODES + cells / CELLS_A_NODE, { at, place }));
    if (left > least()) task.kick();
    if (left > least() && !task.spent())
      left = Math.min(left, branch(task, part(task, relaxation, bound, at, place), depth + 1));
    open = Math.max(open, left);
  }
  return open;
}

/** The part of a relaxation in which slot `at` is settled, without what cannot beat the best any more. */
function part(task: Task, whole: Relaxation, bound: number, at: number, place: number): Relaxation {
  const design = whole.designs[at]![place]!;
  const own = whole.slots[at]!;
  const against = (slot: number, other: number): boolean =>
    task.rules.some(
      ([low, high]) =>
        (low === own && high === slot && other < design) ||
        (high === own && low === slot && other > design),
    );
  const rest = bound + whole.unary[at]![place]!;
  const kept = whole.designs.map((list, slot) => {
    const row = whole.unary[slot]!;
    return Int32Array.from(
      [...list.keys()].filter(
        (other) =>
          (list[other] !== design || whole.copies[design]! > 1) &&
          !against(whole.slots[slot]!, list[other]!) &&
          (slot === at || rest + row[other]! > task.pool.least() + HAIR),
      ),
    );
  });
  const child = settle(whole, at, place, kept);
  for (const wide of task.wides)
    if (wide.scope.includes(own) && wide.scope.every((one) => child.settled[one] !== -1))
      child.constant += wide.correction(child.settled);
  return child;
}

/** The slot with the fewest designs for how far they fall behind the best of them. */
function mostTelling({ unary }: Relaxation): number {
  let best = 0;
  let most = -Infinity;
  unary.forEach((row, at) => {
    const top = row.reduce((high, value) => Math.max(high, value), -Infinity);
    const behind = row.reduce((sum, value) => sum + top - value, 0) / row.length;
    const telling = (behind + 1e-12) / row.length;
    if (telling > most) {
      most = telling;
      best = at;
    }
  });
  return best;
}
