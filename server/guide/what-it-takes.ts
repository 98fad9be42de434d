import type { Lab } from '../colour/lab.ts';
import { inksForAccents } from '../supplies/best-ink.ts';
import type { Supply, SupplyKind } from '../supplies/supply.ts';
import type { GuideAsk } from './ask.ts';
import type { CardFacts, Facts } from './facts.ts';
import { greetingInk } from './greeting-words.ts';
import { capital, cardsSaid, counted } from './said.ts';
import { purchases, sheetsTaken } from './stock-purchases.ts';
import { stockSizeSaid } from './stock-size.ts';
import type { StockNeed } from './stock-needs.ts';

/** A cardstock or an ink that the batch takes: how much of it, and what of that she has. */
export interface Taken {
  readonly kind: SupplyKind;
  readonly name: string;
  readonly lab: Lab;
  /** '3 sheets of 8 1/2 x 11 in; you have 5', '2 sheets of 8 1/2 x 11 in, to buy', 'for the greetings of cards 1 and 3'. */
  readonly said: string;
  /** Whether some of it is to buy. */
  readonly toBuy: boolean;
}

export interface WhatItTakes {
  readonly taken: readonly Taken[];
  /** What it means for her purse, in one sentence. */
  readonly said: string;
}

/** All that the batch takes of cardstock and ink, in one place: what she has of it, and whether anything is to buy. */
export function whatItTakes(ask: GuideAsk, facts: Facts, needs: readonly StockNeed[]): WhatItTakes {
  const stock = needs.map((need) => stockTaken(ask, need));
  const bought = purchases(ask, needs)
    .filter(({ kind }) => kind === 'ink')
    .map(({ kind, name, lab, cards }): Taken => ({
      kind,
      lab,
      name: `${capital(name)} ink`,
      said: `to stamp ${cardsSaid(cards)}, to buy`,
      toBuy: true,
    }));
  const taken = [...stock, ...inksTaken(ask, facts), ...bought];
  return { taken, said: summary(ask, needs, taken) };
}

function summary(ask: GuideAsk, needs: readonly StockNeed[], taken: readonly Taken[]): string {
  if (taken.some(({ toBuy }) => toBuy)) return 'What is to buy stands on the shopping list.';
  const unsaid = needs.some(({ stock }) => leftOf(ask, stock.key) === null);
  return unsaid
    ? 'Nothing is to buy, if that many sheets are left.'
    : 'Nothing is to buy: you have all of it.';
}

function stockTaken(ask: GuideAsk, { stock, scheme }: StockNeed): Taken {
  const { name, lab } = stock;
  const sheets = sheetsTaken(ask, scheme);
  const left = leftOf(ask, stock.key);
  const short = left !== null && sheets !== null && left < sheets.count;
  const many =
    sheets === null
      ? 'a sheet larger than the usual ones'
      : `${counted(sheets.count, 'sheet')} of ${stockSizeSaid(sheets.size, ask.ruler)}`;
  const have = stock.toBuy
    ? ', to buy'
    : left === null
      ? '; you have some'
      : `; you have ${left}${short ? `, ${sheets.count - left} to buy` : ''}`;
  return { kind: 'cardstock', name, lab, said: `${many}${have}`, toBuy: stock.toBuy || short };
}

function leftOf({ supplies }: GuideAsk, key: string): number | null {
  return supplies.find(({ id }) => id === key)?.sheets ?? null;
}

interface InkUse {
  readonly ink: Supply;
  readonly use: 'greeting' | 'stamp';
  readonly card: number;
}

/** Her inks, with what is stamped in each. */
function inksTaken(ask: GuideAsk, { cards }: Facts): Taken[] {
  const uses = cards.flatMap((card): InkUse[] => {
    const { number } = card;
    const greeting = greetingInk(ask, card);
    const stamp = stampInk(ask, card);
    return [
      ...(greeting === null ? [] : [{ ink: greeting, use: 'greeting' as const, card: number }]),
      ...(stamp === null ? [] : [{ ink: stamp, use: 'stamp' as const, card: number }]),
    ];
  });
  const inks = [...new Map(uses.map(({ ink }) => [ink.id, ink])).values()];
  return inks.map(({ id, name, lab }): Taken => {
    const cardsOf = (use: InkUse['use']): number[] =>
      uses.filter((one) => one.ink.id === id && one.use === use).map(({ card }) => card);
    const said = (['greeting', 'stamp'] as const).flatMap((use) => {
      const found = cardsOf(use);
      return found.length === 0
        ? []
        : [`the ${use}${found.length === 1 ? '' : 's'} of ${cardsSaid(found)}`];
    });
    return { kind: 'ink', name, lab, said: `for ${said.join(' and ')}; you have it`, toBuy: false };
  });
}

/** The ink of hers that picks up the strongest accent of a card on which more than a greeting is stamped. */
function stampInk({ supplies }: GuideAsk, { layout, layers }: CardFacts): Supply | null {
  if (!(layout.elements ?? []).some(({ kind }) => kind === 'stamp')) return null;
  const sides = layers.flatMap(({ paper }) => (paper === null ? [] : [paper.side]));
  const [best] = sides
    .flatMap((side) => inksForAccents(supplies, side))
    .filter(({ best: ink }) => ink !== null && ink.match.verdict !== 'apart')
    .sort((a, b) => b.accent.share - a.accent.share);
  return best?.best?.ink ?? null;
}
