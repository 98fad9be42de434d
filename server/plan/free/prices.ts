import type { FreeCard, FreeWorld } from './free-world.ts';
import { walkRows } from './rows.ts';

/** A price for a whole sheet of each design, and the bound that these prices prove. */
export interface Prices {
  readonly price: Float64Array;
  /** No plan is worth more, however the pieces are cut. */
  readonly bound: number;
}

/** Rounds of price changes; the bound hardly falls after that. */
const ROUNDS = 260;
/** The step is halved after so many rounds without a lower bound. */
const PATIENCE = 8;

/**
 * Prices at which the cards, each buying the papers it likes best for what they are worth to it, together ask
 * for about as much paper as there is.
 *
 * Takes       the world, and the worth of some plan, by which the steps are measured.
 * Gives       the best prices found. For any prices, the cards' gains and what the sheets would fetch add up
 *             to a bound: paper is counted by area only and every print counts as
 *             standing, so every way of cutting is within it.
 * Method      Lagrangian relaxation of the sheets' areas, with subgradient steps.
 * Source      Held, Wolfe, Crowder (1974), Math. Programming 6, 62-88, doi:10.1007/BF01580223.
 */
export function pricesFor(world: FreeWorld, worth: number): Prices {
  const designs = world.copies.length;
  const price = new Float64Array(designs);
  let best: Prices = { price: price.slice(), bound: Infinity };
  let scale = 1.2;
  let still = 0;
  const groups = alike(world);
  const used = new Float64Array(designs);
  for (let round = 0; round < ROUNDS && scale > 1e-3; round++) {
    used.fill(0);
    let bound = 0;
    for (const { card, count, area } of groups) {
      const { worth: gain, cell } = bestBuy(card, area, price);
      bound += count * gain;
      for (let at = area.length - 1, rest = cell; at >= 0; at--) {
        used[rest % designs]! += count * area[at]!;
        rest = Math.floor(rest / designs);
      }
    }
    const offered = dearest(world, price);
    for (let design = 0; design < designs; design++) {
      bound += offered[design]! * price[design]!;
      used[design]! -= offered[design]!;
    }
    if (bound < best.bound - 1e-9) {
      best = { price: price.slice(), bound };
      still = 0;
    } else if (++still === PATIENCE) {
      scale /= 2;
      still = 0;
      price.set(best.price);
    }
    const length = used.reduce((sum, value) => sum + value * value, 0);
    if (length < 1e-12) break;
    const step = (scale * Math.max(1e-3, bound - worth)) / length;
    for (let design = 0; design < designs; design++)
      price[design] = Math.max(0, price[design]! + step * used[design]!);
  }
  return best;
}

interface Group {
  readonly card: FreeCard;
  readonly count: number;
  readonly area: readonly number[];
}

/** Cards of one table and the same areas buy the same. */
function alike({ standing, area }: FreeWorld): Group[] {
  const groups: { card: FreeCard; count: number; area: number[] }[] = [];
  for (const card of standing) {
    const own = card.lots.map((lot) => area[lot]!);
    const known = groups.find(
      (group) =>
        group.card.table === card.table && group.area.every((value, at) => value === own[at]),
    );
    if (known === undefined) groups.push({ card, count: 1, area: own });
    else known.count++;
  }
  return groups;
}

/** How many sheets of each design to offer when no more than `most` may be: those that fetch most. */
function dearest({ copies, most }: FreeWorld, price: Float64Array): Float64Array {
  const offered = new Float64Array(copies.length);
  let left = most;
  for (const design of [...copies.keys()].sort((p, q) => price[q]! - price[p]!)) {
    offered[design] = Math.min(left, copies[design]!);
    left -= offered[design];
  }
  return offered;
}

/** The choice of designs that is worth most to a card after paying for its paper. */
function bestBuy(
  { table, tops }: FreeCard,
  area: readonly number[],
  price: Float64Array,
): { worth: number; cell: number } {
  if (area.length === 0) return { worth: table[0]!, cell: 0 };
  const [last, designs] = [area.at(-1)!, price.length];
  let worth = -Infinity;
  let found = 0;
  walkRows(area, price, (row, paid) => {
    if (tops[row]! - paid <= worth) return;
    for (let design = 0, cell = row * designs; design < designs; design++, cell++) {
      const gain = table[cell]! - paid - last * price[design]!;
      if (gain > worth) {
        worth = gain;
        found = cell;
      }
    }
  });
  return { worth, cell: found };
}
