import type { Plan, PlannedCard } from '../../server/contract/plans.ts';

/** A new plan that keeps the pictures of the cards that stayed as they were, so that only changes are drawn. */
export function samePictures(plan: Plan, before: Plan | null): Plan {
  if (!before) return plan;
  const known = new Map(before.cards.map((card) => [madeOf(card, before), card.picture]));
  return {
    ...plan,
    cards: plan.cards.map((card) => ({
      ...card,
      picture: known.get(madeOf(card, plan)) ?? card.picture,
    })),
  };
}

/** All that a picture shows: the card, its layers, and the slots its sheets are cut from. */
function madeOf(card: PlannedCard, plan: Plan): string {
  const slots = plan.sheetsUsed.filter(({ cards }) => cards.includes(card.number));
  return JSON.stringify([card.number, card.layout, card.layers, slots]);
}
