import type { BatchCard } from '../cutting/pieces-of.ts';
import { Refusal } from '../refusals/refusal.ts';
import type { PlanAsk } from './ask.ts';
import { designsOf } from './options.ts';

/** Refuses an ask with more slots than there are sheets, and says which cards to take off, or how many sheets are missing. */
export function enoughSheets(ask: PlanAsk): void {
  const count = (without: readonly string[]): number =>
    designsOf(ask.pad.sheets, without).reduce((sum, { sheet }) => sum + sheet.copies, 0);
  const needed = ask.scheme.slots.length;
  const have = count(ask.without);
  if (have >= needed) return;
  const missing = needed - have;
  const hers = count([]) >= needed;
  throw new Refusal({
    kind: 'does-not-fit',
    field: hers ? 'without' : 'cards',
    received: have,
    message: `These cards take ${sheets(needed)}, and ${have === 0 ? 'none is' : `${have} ${have === 1 ? 'is' : 'are'}`} there: ${sheets(missing)} ${missing === 1 ? 'is' : 'are'} missing.`,
    mend: `${hers ? `Let ${missing === 1 ? 'one' : missing} of the sheets that you left out back in` : `Photograph ${sheets(missing)} more, or say how many copies of a sheet you have`}${takeOff(ask, missing)}.`,
  });
}

/** 'or take 2 cards off: ...': the fewest cards whose going empties so many slots; nothing when no card would stay. */
function takeOff(ask: PlanAsk, missing: number): string {
  const gone = fewestCards(
    ask.scheme.slots.map(({ pieces }) => new Set(pieces.map(({ piece }) => piece.card))),
    missing,
  );
  if (gone.size >= ask.cards.length) return '';
  const off = ask.cards.filter(({ number }) => gone.has(number));
  return `; or take off ${cardsInWords(off)}: the other ${ask.cards.length - off.length} then have enough paper. Any layout with less patterned paper helps too`;
}

/** Up to this many slots all choices of slots to empty are tried. */
const MOST_TRIED = 20_000;

/** The fewest cards that must go so that `count` slots hold nothing any more; of some thousand choices, and by greed. */
function fewestCards(slots: readonly ReadonlySet<number>[], count: number): Set<number> {
  let best = byGreed(slots, count);
  let tried = 0;
  const visit = (from: number, left: number, gone: ReadonlySet<number>): void => {
    if (gone.size >= best.size || tried++ > MOST_TRIED) return;
    if (left === 0) {
      best = new Set(gone);
      return;
    }
    for (let at = from; at <= slots.length - left; at++)
      visit(at + 1, left - 1, new Set([...gone, ...slots[at]!]));
  };
  visit(0, count, new Set());
  return best;
}

function byGreed(slots: readonly ReadonlySet<number>[], count: number): Set<number> {
  const gone = new Set<number>();
  const open = [...slots];
  for (let turn = 0; turn < count; turn++) {
    const more = open.map((cards) => [...cards].filter((card) => !gone.has(card)).length);
    const [slot] = open.splice(more.indexOf(Math.min(...more)), 1);
    for (const card of slot!) gone.add(card);
  }
  return gone;
}

/** '2 cards of Framed and 1 of Banded (cards 3, 4 and 7)'. */
function cardsInWords(cards: readonly BatchCard[]): string {
  const counts = new Map<string, number>();
  for (const { layout } of cards) counts.set(layout.name, (counts.get(layout.name) ?? 0) + 1);
  const named = [...counts].map(([name, count], at) =>
    at === 0 ? `${count} ${count === 1 ? 'card' : 'cards'} of '${name}'` : `${count} of '${name}'`,
  );
  const numbers = cards.map(({ number }) => String(number));
  return `${listed(named)} (${numbers.length === 1 ? 'card' : 'cards'} ${listed(numbers)})`;
}

function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`;
}

function sheets(count: number): string {
  return count === 1 ? '1 sheet' : `${count} sheets`;
}
