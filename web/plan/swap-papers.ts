import type { Pin, PlannedCard } from '../../server/contract/plans.ts';
import { planWords } from '../words/plan.ts';
import { withPin } from './wishes.ts';

/** A layer of a card of the plan; no layer where no patterned paper lies. */
export interface Spot {
  readonly card: number;
  readonly layer: string | null;
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
  if (mine === null || theirs === null) return planWords.pull.noPaper;
  if (mine === theirs) return planWords.pull.same;
  return null;
}

export function sideAt(cards: readonly PlannedCard[], { card, layer }: Spot): string | null {
  const found = cards.find(({ number }) => number === card);
  return found?.layers.find((one) => one.layer === layer)?.side ?? null;
}

export function sameSpot(a: Spot | null, b: Spot | null): boolean {
  return a?.card === b?.card && a?.layer === b?.layer;
}
