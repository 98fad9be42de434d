import type { VNode } from 'preact';
import { Once } from '../table/waiting.tsx';
import { words } from '../words.ts';
import { bestOfPlan, plansOf } from '../wire/shelves.ts';
import { BestBoard } from './best-board.tsx';

/** For the plan that was made last from a pad: the best of her supplies, and the shopping list. */
export function PlanSupplies({ pad }: { pad: string }): VNode | null {
  const latest = plansOf.at(pad).value.value?.at(-1);
  if (latest === undefined) return null;
  return (
    <section aria-labelledby="for-plan">
      <h2 id="for-plan">{words.match.forPlan(latest.cards)}</h2>
      <Once of={bestOfPlan.at(latest.id)} again={() => void bestOfPlan.fresh(latest.id)}>
        {(best) => <BestBoard best={best} />}
      </Once>
    </section>
  );
}
