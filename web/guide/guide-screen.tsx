import type { VNode } from 'preact';
import { LatestPlan } from '../plan/latest-plan.tsx';
import type { OnTable } from '../plan/table-of.ts';
import { WithPlan } from '../plan/with-plan.tsx';
import { ruler } from '../table/settings.ts';
import { Once } from '../table/waiting.tsx';
import { words } from '../words.ts';
import { cuts } from '../wire/shelves.ts';
import { GuideSteps } from './guide-steps.tsx';

/** The guide propped up at the table: one step at a time, in large type. */
export function GuideScreen({ pad, plan }: { pad: string; plan: string | null }): VNode {
  if (plan === null) return <LatestPlan pad={pad} at="guide" />;
  return (
    <WithPlan
      pad={pad}
      plan={plan}
      heading={words.stations.guide}
      show={(whole) => <WithCuts {...whole} />}
    />
  );
}

function WithCuts(table: OnTable): VNode {
  const key = `${table.plan.id}/${ruler.value}`;
  return (
    <Once of={cuts.at(key)} again={() => void cuts.fresh(key)} heading={words.guide.heading}>
      {(slots) => <GuideSteps key={table.plan.id} table={table} slots={slots} />}
    </Once>
  );
}
