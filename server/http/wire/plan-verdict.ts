import type { Plan } from '../../plan/plan.ts';

/**
 * How sure a plan is, in words: proven best, or by how much another could be better at most; both among the
 * plans that keep what she asked to keep.
 */
export function verdictOf(
  { proven, value, bound, otherwise }: Pick<Plan, 'proven' | 'value' | 'bound' | 'otherwise'>,
  kept: boolean,
): string {
  const given = kept ? 'with what you kept, and the sheets' : 'with the sheets';
  if (proven)
    return `Proven best: ${given} cut as in the guide, no choice of papers goes together better.`;
  if (otherwise !== undefined)
    return 'The cards that you did not touch lie as they lay: chosen anew they would go together hardly better, by 1 of 100 at most.';
  const gap = Math.max(1, Math.ceil((100 * (bound - value)) / Math.max(value, 1e-9)));
  return `The best found so far${kept ? ' with what you kept' : ''}; another choice could be at most ${gap} % better.`;
}
