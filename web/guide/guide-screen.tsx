import type { VNode } from 'preact';
import { LatestPlan } from '../plan/latest-plan.tsx';
import { WithPlan } from '../plan/with-plan.tsx';
import { words } from '../words.ts';
import { GuideSteps } from './guide-steps.tsx';

/** The guide propped up at the table: one step at a time, in large type. */
export function GuideScreen({ pad, plan }: { pad: string; plan: string | null }): VNode {
  if (plan === null) return <LatestPlan pad={pad} at="guide" />;
  return (
    <WithPlan
      pad={pad}
      plan={plan}
      heading={words.stations.guide}
      show={(whole) => <GuideSteps {...whole} />}
    />
  );
}
