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
export interface Purchase<Wish extends Wanted = Wanted> {
  readonly kind: SupplyKind;
  readonly lab: Lab;
  /** ISCC-NBS words: 'light bluish green'. */
  readonly name: string;
  /** The cards that it serves, in order. */
  readonly cards: readonly number[];
  readonly area: number;
  /** The wishes that it serves. */
  readonly serves: readonly Wish[];
}

/**
 * What to buy, merged so that one purchase serves several cards: colours within the reach of 'close' of
 * each other are one purchase, in the colour that is wanted most.
 *
 * Gives       the purchases, cardstock first, each kind by the number of cards served.
 */
export function shoppingList<Wish extends Wanted>(wanted: readonly Wish[]): Purchase<Wish>[] {
  const left = [...gather(wanted)];
  const purchases: Purchase<Wish>[] = [];
  while (left.length > 0) {
    const best = left.reduce((a, b) => (demand(b, left) > demand(a, left) ? b : a));
    const served = left.filter((one) => isServed(one, best));
    served.forEach((one) => left.splice(left.indexOf(one), 1));
    const wishes = served.flatMap((one) => one.wishes);
    purchases.push({
      kind: best.kind,
      lab: best.lab,
      name: nameOf(best.lab).words,
      cards: [...new Set(wishes.map(({ card }) => card))].sort((a, b) => a - b),
      area: wishes.reduce((sum, { area }) => sum + area, 0),
      serves: wishes,
    });
  }
  return purchases.sort(
    (a, b) => a.kind.localeCompare(b.kind) || b.cards.length - a.cards.length || b.area - a.area,
  );
}

interface Gathered<Wish> {
  readonly kind: SupplyKind;
  readonly lab: Lab;
  readonly wishes: readonly Wish[];
}

/** Equal colours of one kind as one. */
function gather<Wish extends Wanted>(wanted: readonly Wish[]): Gathered<Wish>[] {
  const colours = new Map<string, Gathered<Wish>>();
  for (const wish of wanted) {
    const { kind, lab } = wish;
    const key = `${kind} ${lab.l} ${lab.a} ${lab.b}`;
    colours.set(key, { kind, lab, wishes: [...(colours.get(key)?.wishes ?? []), wish] });
  }
  return [...colours.values()];
}

/** How many wishes a colour would serve. */
function demand(colour: Gathered<Wanted>, all: readonly Gathered<Wanted>[]): number {
  return all
    .filter((one) => isServed(one, colour))
    .reduce((sum, { wishes }) => sum + wishes.length, 0);
}

function isServed(one: Gathered<Wanted>, by: Gathered<Wanted>): boolean {
  return one.kind === by.kind && difference(one.lab, by.lab) <= LIMITS.close;
}
