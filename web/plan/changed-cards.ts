import type { Pin, Plan } from '../../server/contract/plans.ts';
import { slotsOf } from './slots-of.ts';

/** The cards of a plan that are made of something else than in the plan before, by their numbers. */
export function changedCards(before: Plan, after: Plan): number[] {
  const madeOf = new Map(
    before.cards.map(({ number, layers }) => [number, JSON.stringify(layers)]),
  );
  return after.cards
    .filter(({ number, layers }) => madeOf.get(number) !== JSON.stringify(layers))
    .map(({ number }) => number);
}

/** The cards whose pins are not the same in both: those that she has changed herself. */
export function pinnedAnew(before: readonly Pin[] = [], after: readonly Pin[] = []): number[] {
  const [old, fresh] = [before, after].map(
    (pins) => new Set(pins.map((pin) => JSON.stringify(pin))),
  );
  const apart = [
    ...before.filter((pin) => !fresh!.has(JSON.stringify(pin))),
    ...after.filter((pin) => !old!.has(JSON.stringify(pin))),
  ];
  return [...new Set(apart.map(({ card }) => card))];
}

/**
 * Whether these cards had to change: one sheet came into the place of another, or two changed over, and pieces of all of
 * these cards are cut from them.
 */
export function changedBySheets(before: Plan, after: Plan, cards: readonly number[]): boolean {
  const were = slotsOf(before);
  const exchanged = after.sheetsUsed.filter(({ slot, sheet }) => were[slot] !== sheet);
  const cutFrom = new Set(exchanged.flatMap((sheet) => sheet.cards));
  return exchanged.length <= 2 && cards.every((card) => cutFrom.has(card));
}
