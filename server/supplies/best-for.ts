import { difference } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Side } from '../pad/pad.ts';
import { bestCardstock } from './best-cardstock.ts';
import type { RankedCardstock } from './best-cardstock.ts';
import { bestGreetingInk, inksForAccents } from './best-ink.ts';
import type { AccentInk, RankedInk } from './best-ink.ts';
import { shoppingList } from './shopping-list.ts';
import type { Purchase } from './shopping-list.ts';
import type { Supply } from './supply.ts';
import { LIMITS } from './verdict.ts';
import { whatIsMissing } from './what-is-missing.ts';

/** What supplies are chosen for: a card, or a side by itself (then it is card 0). */
export interface Occasion {
  readonly card: number;
  /** The sides that lie on it. */
  readonly sides: readonly Side[];
  /** The colours that a greeting may be stamped on. */
  readonly strips: readonly Lab[];
  /** Whether it wants a cardstock found; a planned card has its own already, or one that is to be bought. */
  readonly wantsCardstock: boolean;
  /** Whether it wants an ink in an accent: a planned card does where more than a greeting is stamped on it. */
  readonly wantsAccent: boolean;
  /** The place in the palette of each side of the one colour that is asked of; left out, all of them are. */
  readonly colour?: number | undefined;
}

/** An accent that several cards may share, with the nearest ink of hers. */
export interface SharedAccent extends AccentInk {
  readonly cards: readonly number[];
}

/** A colour of strip that several cards may share, with her inks, the best first: of each of them the same one. */
export interface SharedStrip {
  readonly strip: Lab;
  readonly cards: readonly number[];
  readonly inks: readonly RankedInk[];
}

export interface BestSupplies {
  readonly cardstock: readonly RankedCardstock[];
  readonly accents: readonly SharedAccent[];
  readonly greetings: readonly SharedStrip[];
  readonly missing: readonly Purchase[];
}

/** An accent counts for an ink from this share of a side. A judgement, no source. */
const SEEN = 0.05;

/**
 * The best of what she has for a side, a card or a whole plan, and what is missing.
 *
 * Takes       her supplies, and one occasion for each card.
 * Gives       cardstock for mats and bases, inks for accents and for greetings, the best first; and a
 *             shopping list in which one purchase serves several cards.
 */
export function bestFor(supplies: readonly Supply[], occasions: readonly Occasion[]): BestSupplies {
  const sides = [
    ...new Map(occasions.flatMap((one) => one.sides).map((side) => [side.id, side])).values(),
  ];
  return {
    cardstock: sides.length === 0 ? [] : bestCardstock(supplies, sides, occasions[0]?.colour),
    accents: sharedAccents(supplies, occasions),
    greetings: sharedStrips(supplies, occasions),
    missing: missingFor(supplies, occasions),
  };
}

/** What is missing for all of them, as a shopping list. */
export function missingFor(
  supplies: readonly Supply[],
  occasions: readonly Occasion[],
): Purchase[] {
  return shoppingList(occasions.flatMap((one) => whatIsMissing(supplies, one)));
}

function sharedAccents(
  supplies: readonly Supply[],
  occasions: readonly Occasion[],
): SharedAccent[] {
  const shared: SharedAccent[] = [];
  for (const { card, sides, colour } of occasions) {
    for (const found of sides.flatMap((side) => inksForAccents(supplies, side, colour))) {
      if (colour === undefined && found.accent.share < SEEN) continue;
      const at = shared.findIndex(
        ({ accent }) => difference(accent.lab, found.accent.lab) <= LIMITS.close,
      );
      if (at < 0) shared.push({ ...found, cards: [card] });
      else shared[at] = { ...larger(shared[at]!, found), cards: joined(shared[at]!.cards, card) };
    }
  }
  return shared.sort((a, b) => b.cards.length - a.cards.length || b.accent.share - a.accent.share);
}

function larger(one: AccentInk, other: AccentInk): AccentInk {
  return other.accent.share > one.accent.share ? other : one;
}

function sharedStrips(supplies: readonly Supply[], occasions: readonly Occasion[]): SharedStrip[] {
  const shared: SharedStrip[] = [];
  for (const { card, sides, strips } of occasions) {
    for (const strip of strips) {
      const inks = bestGreetingInk(supplies, strip, sides);
      const at = shared.findIndex(
        (one) =>
          difference(one.strip, strip) <= LIMITS.perceived &&
          one.inks[0]?.ink.id === inks[0]?.ink.id,
      );
      if (at < 0) shared.push({ strip, cards: [card], inks });
      else shared[at] = { ...shared[at]!, cards: joined(shared[at]!.cards, card) };
    }
  }
  return shared;
}

function joined(cards: readonly number[], card: number): readonly number[] {
  return cards.includes(card) ? cards : [...cards, card];
}
