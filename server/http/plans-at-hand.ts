import type { Edges } from './edges.ts';
import type { KeptPlan } from './make-plan.ts';

/** Half a megabyte each, mostly the pad they were made from. */
const AT_HAND = 12;

const plans = new WeakMap<Edges['desk'], Map<string, KeptPlan>>();

/** The plans looked at last: a plan never changes, and reading it again for each of its cards takes longer than drawing them. */
export function plansAtHand({ desk }: Edges): {
  at: (id: string) => KeptPlan | null;
  put: (plan: KeptPlan) => void;
} {
  const known = plans.get(desk) ?? new Map<string, KeptPlan>();
  plans.set(desk, known);
  return {
    at: (id) => known.get(id) ?? null,
    put: (plan) => {
      known.delete(plan.id);
      known.set(plan.id, plan);
      const [oldest] = known.keys();
      if (known.size > AT_HAND) known.delete(oldest!);
    },
  };
}
