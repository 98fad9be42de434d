import type { Plan } from '../../plan/plan.ts';

/** A hundredth for each card: so much less a plan may be worth for leaving cards as they lay. */
const LITTLE = 0.01 + 1e-9;

/**
 * How sure a plan is, in words: proven best, or by how much another could be better at most; both among the
 * plans that keep what she asked to keep. What is said to be at most is held against the bound, which no plan
 * passes, and not against the best plan that is known.
 */
export function verdictOf(
  {
    proven,
    value,
    bound,
    otherwise,
    cards,
  }: Pick<Plan, 'proven' | 'value' | 'bound' | 'otherwise'> & {
    readonly cards: readonly unknown[];
  },
  kept: boolean,
): string {
  const given = kept ? 'with what you kept, and the sheets' : 'with the sheets';
  if (proven)
    return `Proven best: ${given} cut as in the guide, no choice of papers goes together better.`;
  const gap = Math.max(1, Math.ceil((100 * (bound - value)) / Math.max(value, 1e-9)));
  if (otherwise !== undefined)
    return bound - value <= LITTLE * cards.length
      ? 'Other cards lie as they lay, but for those that had to follow: chosen anew they would go together hardly better, by 1 of 100 at most.'
      : `Other cards lie as they lay, but for those that had to follow: the best choice found anew is hardly better; another could be at most ${gap} % better.`;
  return `The best found so far${kept ? ' with what you kept' : ''}; another choice could be at most ${gap} % better.`;
}
