import type { NewPlan } from '../../server/contract/plans.ts';
import { plansOf } from '../wire/shelves.ts';

/** What she asked of a plan. */
export type Wishes = Omit<NewPlan, 'pad'>;

/** A plan that she can go back or on to. */
export interface Step {
  readonly plan: string;
}

/**
 * The plans on either side of a plan: the one that it changed, and the latest that changed it. The service
 * keeps which plan came from which, so undo and redo have no end and are the same on every device.
 */
export function neighbours(pad: string, plan: string): { before?: Step; after?: Step } {
  const all = plansOf.at(pad).value.value ?? [];
  const from = all.find(({ id }) => id === plan)?.from ?? null;
  const next = all.findLast((one) => one.from === plan);
  return {
    ...(from !== null && all.some(({ id }) => id === from) && { before: { plan: from } }),
    ...(next && { after: { plan: next.id } }),
  };
}
