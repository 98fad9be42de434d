import type { Plan, PlanSummary } from '../../server/contract/plans.ts';
import type { Supply } from '../../server/contract/supplies.ts';
import { newerSupplies } from './newer-supplies.ts';

/**
 * The cardstock for which a plan is chosen again by itself: it still has some to find, some came since, it is the
 * newest plan of its pad, so that what she took back or opened again stays as it is, and nothing of it is cut.
 */
export function cameForPlan(
  plan: Plan,
  supplies: readonly Supply[],
  all: readonly PlanSummary[],
  done: number,
): readonly Supply[] {
  const toFind = plan.cards.some(({ layers }) => layers.some(({ wanted }) => wanted));
  if (!toFind || done > 0 || all.at(-1)?.id !== plan.id) return [];
  return newerSupplies(plan, supplies).added.filter(({ kind }) => kind === 'cardstock');
}

/** All windows that look at a plan say the same, whatever of her supplies each has heard of, so that one plan comes of it. */
export function wordOf(plan: string): string {
  return `came-${plan}`;
}
