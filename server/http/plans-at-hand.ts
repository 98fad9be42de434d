import type { Edges } from './edges.ts';
import { Lately } from '../recall/lately.ts';
import type { KeptPlan } from './make-plan.ts';

/** As text 0.2 MB each for a pad of twelve sheets, most of it the pad they were made from. */
const AT_HAND = 12;

const plans = new WeakMap<Edges['desk'], Lately<string, KeptPlan>>();

/** The plans looked at last: a plan never changes, and reading it again for each of its cards takes longer than drawing them. */
export function plansAtHand({ desk }: Edges): Lately<string, KeptPlan> {
  const known = plans.get(desk) ?? new Lately<string, KeptPlan>(AT_HAND);
  plans.set(desk, known);
  return known;
}
