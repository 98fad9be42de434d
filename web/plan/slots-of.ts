import type { Plan } from '../../server/contract/plans.ts';

/** Which sheet each slot of a plan is cut from. */
export function slotsOf({ sheetsUsed }: Pick<Plan, 'sheetsUsed'>): Record<string, string> {
  return Object.fromEntries(sheetsUsed.map(({ slot, sheet }) => [slot, sheet]));
}
