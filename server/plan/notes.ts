import type { Palette } from '../colour/palette.ts';
import { words } from './coordination/words.ts';
import type { PlanAsk } from './ask.ts';
import type { ChosenCard } from './plan.ts';

/** Sentences about the whole plan: what to buy, what may run short, and what a photo cannot tell. */
export function notesOf(ask: PlanAsk, cards: readonly ChosenCard[]): string[] {
  return [...shopping(cards), ...stock(ask, cards), ...uncertain(ask)];
}

function shopping(cards: readonly ChosenCard[]): string[] {
  const wanted = new Map<string, Set<number>>();
  for (const card of cards) {
    for (const { choice } of card.layers) {
      if (choice.kind !== 'wanted') continue;
      const name = words(choice.lab);
      wanted.set(name, (wanted.get(name) ?? new Set()).add(card.number));
    }
  }
  return [...wanted].map(
    ([name, numbers]) =>
      `Cardstock to buy: ${name}, for ${numbers.size === 1 ? 'card' : 'cards'} ${[...numbers].join(', ')}.`,
  );
}

function stock(ask: PlanAsk, cards: readonly ChosenCard[]): string[] {
  return ask.supplies.flatMap((supply) => {
    if (supply.sheets === null) return [];
    const using = cards.filter((card) =>
      card.layers.some(({ choice }) => choice.kind === 'supply' && choice.supply === supply.id),
    );
    if (using.length <= supply.sheets) return [];
    return [
      `${using.length} cards take ${supply.name} and ${supply.sheets} ${supply.sheets === 1 ? 'sheet is' : 'sheets are'} left: check on the cutting list that it is enough.`,
    ];
  });
}

/** From here on a side was read in poor light or without a white card, CIEDE2000; thin strokes alone are not meant. */
const POOR = 2.5;

function uncertain(ask: PlanAsk): string[] {
  const unsure = ask.pad.sheets.some(({ front, back }) =>
    [front, back].some((side) => side !== null && meanUncertainty(side.palette) > POOR),
  );
  return unsure
    ? [
        'Some colours were read from photos that leave much open: lay the papers of a card side by side in daylight before you cut.',
      ]
    : [];
}

function meanUncertainty({ colours }: Palette): number {
  return colours.reduce((sum, { share, uncertainty }) => sum + share * uncertainty, 0);
}
