import type { Pin, Plan } from '../../server/contract/plans.ts';

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
