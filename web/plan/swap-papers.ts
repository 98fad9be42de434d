import type { Pin, Plan, PlannedCard } from '../../server/contract/plans.ts';
import { planWords } from '../words/plan.ts';
import { withPin } from './wishes.ts';

/** A layer of a card of the plan; no layer where no patterned paper lies. */
export interface Spot {
  readonly card: number;
  readonly layer: string | null;
  /** What the layer is called that is plain cardstock there. */
  readonly plain?: string;
}

/** The pins with the papers of two layers changed over: each is kept where the other lay. */
export function swapped(
  pins: readonly Pin[],
  cards: readonly PlannedCard[],
  from: Spot,
  to: Spot,
): Pin[] | null {
  if (whyNot(cards, from, to) !== null) return null;
  const one = { card: from.card, layer: from.layer!, side: sideAt(cards, to)! };
  const other = { card: to.card, layer: to.layer!, side: sideAt(cards, from)! };
  return withPin(withPin(pins, one), other);
}

/** Why two papers cannot change places, in words; null when they can. Whether the cuts allow it, the service says. */
export function whyNot(cards: readonly PlannedCard[], from: Spot, to: Spot): string | null {
  const [mine, theirs] = [sideAt(cards, from), sideAt(cards, to)];
  if (from.plain !== undefined) return planWords.pull.plainHere(from.plain);
  if (to.plain !== undefined) return planWords.pull.plainThere(to.plain);
  if (mine === null || theirs === null) return planWords.pull.noPaper;
  if (mine === theirs) return planWords.pull.same;
  return null;
}

/**
 * The pins that hinder two papers from changing over, as far as the page can tell: those that keep the only copy of
 * a sheet in another sheet's pieces. Where the number of sheets is hers, each plan is cut anew, and nothing is told.
 *
 * Takes       the plan, its pins, the two layers, and how many copies there are of a sheet.
 */
export function hindering(
  { cards, sheetsUsed, asked }: Pick<Plan, 'cards' | 'sheetsUsed' | 'asked'>,
  pins: readonly Pin[],
  from: Spot,
  to: Spot,
  copiesOf: (sheet: string) => number,
): Pin[] {
  if (asked.sheets !== undefined) return [];
  const places = [
    { sheet: sheetAt(from), slot: slotAt(to) },
    { sheet: sheetAt(to), slot: slotAt(from) },
  ];
  return pins.filter(({ card, layer, side }) => {
    if (side === undefined || [from, to].some((spot) => sameSpot(spot, { card, layer })))
      return false;
    const there = { card, layer };
    // A pin is known by what lies there: the plan keeps it.
    if (sideAt(cards, there) !== side) return false;
    const [sheet, slot] = [sheetAt(there), slotAt(there)];
    return places.some(
      (place) =>
        place.sheet === sheet &&
        slot !== null &&
        place.slot !== null &&
        place.slot !== slot &&
        copiesOf(sheet!) === 1,
    );
  });

  function sheetAt({ card, layer }: Spot): string | undefined {
    return cards.find(({ number }) => number === card)?.layers.find((one) => one.layer === layer)
      ?.sheet;
  }

  /** Null where several slots of one sheet give pieces to the card. */
  function slotAt(spot: Spot): string | null {
    const found = sheetsUsed.filter(
      (one) => one.sheet === sheetAt(spot) && one.cards.includes(spot.card),
    );
    return found.length === 1 ? found[0]!.slot : null;
  }
}

export function sideAt(cards: readonly PlannedCard[], { card, layer }: Spot): string | null {
  const found = cards.find(({ number }) => number === card);
  return found?.layers.find((one) => one.layer === layer)?.side ?? null;
}

export function sameSpot(a: Spot | null, b: Spot | null): boolean {
  return a?.card === b?.card && a?.layer === b?.layer && a?.plain === b?.plain;
}
