import { chance } from '../network/local-search.ts';
import type { Limit } from '../network/network.ts';
import type { FreeWorld } from './free-world.ts';
import { SheetsOnTable } from './sheets-on-table.ts';
import type { Deal } from './sheets-on-table.ts';
import type { Wanted } from './wanted.ts';

export type { Deal } from './sheets-on-table.ts';

/**
 * Deals papers to the cards, each card as near to its wishes as what is left on the sheets allows; then takes
 * back a few cards again and again and deals them anew, and keeps what is better.
 *
 * Takes       the world, what each card wants, a seed, a limit (`steps`: how often cards are taken back), and a deal
 *             to start from, if there is one.
 * Gives       the best deal found, every sheet of it proven to hold what it must; null when not every card could
 *             be dealt.
 * Method      ruin and recreate with a falling threshold. Schrimpf et al. (2000), J. Comput. Phys. 159, 139-171,
 *             doi:10.1006/jcph.1999.6413.
 */
export function deal(
  world: FreeWorld,
  wanted: readonly Wanted[],
  seed: number,
  limit: Limit,
  start: Deal | null = null,
): Deal | null {
  const random = chance(seed);
  const table = new SheetsOnTable(world, wanted);
  if (start === null) for (const card of byNeed(world)) table.give(card);
  else {
    table.lay(start);
    for (const card of byNeed(world)) if (!table.has(card)) table.give(card);
  }
  let best: Deal | null = null;
  let bestScore = -Infinity;
  const most = 'steps' in limit ? limit.steps : Infinity;
  for (let step = 0; step < most; step++) {
    if (table.score > bestScore + 1e-9) {
      bestScore = table.score;
      if (table.complete) best = table.asDeal();
    }
    if ('until' in limit && step % 32 === 0 && limit.until()) break;
    const before = table.score;
    const part = 'steps' in limit ? step / most : (step % 4000) / 4000;
    const taken = chosen(world, table, random);
    const was = taken.map((card) => table.take(card));
    for (const card of shuffled(taken, random)) table.give(card);
    const slack = SLACK * (1 - part) ** 2 * random();
    if (table.score >= before - slack) continue;
    for (const card of taken) table.take(card);
    taken.forEach((card, at) => table.putBack(card, was[at]!));
  }
  return best;
}

/** A new deal may be worth this much less at first. */
const SLACK = 0.06;

/** Cards that ask for much paper are dealt first. */
function byNeed({ cards, area }: FreeWorld): number[] {
  const need = cards.map(({ lots }) => lots.reduce((sum, lot) => sum + area[lot]!, 0));
  return [...cards.keys()].sort((p, q) => need[q]! - need[p]!);
}

/** One to four cards at random, or all that have a piece of one sheet. */
function chosen({ cards }: FreeWorld, table: SheetsOnTable, random: () => number): number[] {
  if (random() < 0.3) {
    const together = table.onOneSheet(random());
    if (together.length > 0 && together.length <= 6) return together;
  }
  const count = 1 + Math.floor(4 * random() * random());
  const found = new Set<number>();
  while (found.size < Math.min(count, cards.length)) found.add(Math.floor(random() * cards.length));
  return [...found];
}

function shuffled(list: readonly number[], random: () => number): number[] {
  const out = [...list];
  for (let at = out.length - 1; at > 0; at--) {
    const other = Math.floor(random() * (at + 1));
    [out[at], out[other]] = [out[other]!, out[at]!];
  }
  return out;
}
