import type { Plan } from '../../server/contract/plans.ts';

/** A new plan that keeps the pictures of the cards that look the same, as the service says, so that only changes are drawn. */
export function samePictures(plan: Plan, before: Plan | null): Plan {
  const known = new Map((before?.cards ?? []).map(({ number, picture }) => [number, picture]));
  return {
    ...plan,
    cards: plan.cards.map(({ same, ...card }) => {
      const kept = same === true ? known.get(card.number) : undefined;
      return { ...card, picture: kept ?? card.picture };
    }),
  };
}
