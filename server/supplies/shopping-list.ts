import { difference } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { nameOf } from '../colour/names.ts';
import type { SupplyKind } from './supply.ts';
import { LIMITS } from './verdict.ts';

/** A colour that a card lacks. */
export interface Wanted {
  readonly kind: SupplyKind;
  readonly lab: Lab;
  /** Number of the card that wants it. */
  readonly card: number;
  /** Square millimetres of cardstock; 0 for ink. */
  readonly area: number;
}

/** One thing to buy. */
export interface Purchase {
  readonly kind: SupplyKind;
  readonly lab: Lab;
  /** ISCC-NBS words: 'light bluish green'. */
  readonly name: string;
  /** The cards that it serves, in order. */
  readonly cards: readonly number[];
  readonly area: number;
}

/**
 * What to buy, merged so that one purchase serves several cards: colours within the reach of 'close' of
 * each other are one purchase, in the colour that is wanted most.
 *
 * Gives       the purchases, cardstock first, each kind by the number of cards served.
 */
export function shoppingList(wanted: readonly Wanted[]): Purchase[] {
  const left = [...gather(wanted)];
  const purchases: Purchase[] = [];
  while (left.length > 0) {
    const best = left.reduce((a, b) => (demand(b, left) > demand(a, left) ? b : a));
    const served = left.filter((one) => serves(best, one));
    served.forEach((one) => left.splice(left.indexOf(one), 1));
    purchases.push({
      kind: best.kind,
      lab: best.lab,
      name: nameOf(best.lab).words,
      cards: [...new Set(served.flatMap(({ cards }) => cards))].sort((a, b) => a - b),
      area: served.reduce((sum, { area }) => sum + area, 0),
    });
  }
  return purchases.sort(
    (a, b) => a.kind.localeCompare(b.kind) || b.cards.length - a.cards.length || b.area - a.area,
  );
}

interface Gathered {
  readonly kind: SupplyKind;
  readonly lab: Lab;
  readonly cards: readonly number[];
  readonly area: number;
}

/** Equal colours of one kind as one. */
function gather(wanted: readonly Wanted[]): Gathered[] {
  const colours = new Map<string, Gathered>();
  for (const { kind, lab, card, area } of wanted) {
    const key = `${kind} ${lab.l} ${lab.a} ${lab.b}`;
    const known = colours.get(key) ?? { kind, lab, cards: [], area: 0 };
    colours.set(key, { ...known, cards: [...known.cards, card], area: known.area + area });
  }
  return [...colours.values()];
}

/** How many wishes a colour would serve. */
function demand(colour: Gathered, all: readonly Gathered[]): number {
  return all.filter((one) => serves(colour, one)).reduce((sum, { cards }) => sum + cards.length, 0);
}

function serves(colour: Gathered, one: Gathered): boolean {
  return one.kind === colour.kind && difference(one.lab, colour.lab) <= LIMITS.close;
}
