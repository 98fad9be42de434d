import type { Side } from '../pad/pad.ts';
import type { Occasion } from '../supplies/best-for.ts';
import type { GuideAsk } from './ask.ts';

/** What her supplies are chosen for: each card of a plan with the sides that it shows and what is stamped on it. */
export function occasionsOf({
  pad,
  supplies,
  plan,
  cards,
}: Pick<GuideAsk, 'pad' | 'supplies' | 'plan' | 'cards'>): Occasion[] {
  const sides = new Map(
    pad.sheets.flatMap(({ front, back }) =>
      [front, back].flatMap((side): [string, Side][] => (side === null ? [] : [[side.id, side]])),
    ),
  );
  const stock = new Map(supplies.map((supply) => [supply.id, supply]));
  return plan.cards.map(({ number, layers }): Occasion => ({
    card: number,
    sides: [
      ...new Set(
        layers.flatMap(({ choice }) =>
          choice.kind === 'paper' ? (sides.get(choice.side) ?? []) : [],
        ),
      ),
    ],
    strips: layers.flatMap(({ role, choice }) => {
      if (role !== 'greeting') return [];
      if (choice.kind === 'wanted') return [choice.lab];
      if (choice.kind === 'supply') return stock.get(choice.supply)?.lab ?? [];
      return sides.get(choice.side)?.palette.colours[0]?.lab ?? [];
    }),
    // A planned card has its cardstock already, or one that is to be bought.
    wantsCardstock: false,
    wantsAccent: (cards.find((card) => card.number === number)?.layout.elements ?? []).some(
      ({ kind }) => kind === 'stamp',
    ),
  }));
}
