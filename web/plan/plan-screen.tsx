import { useEffect } from 'preact/hooks';
import type { VNode } from 'preact';
import { words } from '../words/words.ts';
import { LatestPlan } from './latest-plan.tsx';
import { rememberPlan } from './made.ts';
import { PlanTable } from './plan-table.tsx';
import { WithPlan } from './with-plan.tsx';

/** The plan: every card with the real papers. */
export function PlanScreen({ pad, plan }: { pad: string; plan: string | null }): VNode {
  useEffect(() => {
    if (plan !== null) rememberPlan(pad, plan);
  }, [pad, plan]);
  if (plan === null) return <LatestPlan pad={pad} at="plan" />;
  return (
    <WithPlan
      pad={pad}
      plan={plan}
      heading={words.stations.plan}
      show={(whole) => <PlanTable {...whole} />}
    />
  );
}
