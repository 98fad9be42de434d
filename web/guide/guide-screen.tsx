import type { VNode } from 'preact';
import { LatestPlan } from '../plan/latest-plan.tsx';
import { Once } from '../table/waiting.tsx';
import { words } from '../words.ts';
import { layouts, pads, plans, supplies } from '../wire/shelves.ts';
import { GuideSteps } from './guide-steps.tsx';

/** The guide propped up at the table: one step at a time, in large type. */
export function GuideScreen({ pad, plan }: { pad: string; plan: string | null }): VNode {
  if (plan === null) return <LatestPlan pad={pad} at="guide" />;
  return (
    <div class="screen">
      <Once of={plans.at(plan)} again={() => void plans.fresh(plan)} heading={words.stations.guide}>
        {(made) => (
          <Once of={pads.at(pad)} again={() => void pads.fresh(pad)} heading={words.stations.guide}>
            {(whole) => (
              <Once
                of={layouts.at('all')}
                again={() => void layouts.fresh('all')}
                heading={words.stations.guide}
              >
                {(catalogue) => (
                  <GuideSteps
                    plan={made}
                    pad={whole}
                    layouts={catalogue}
                    supplies={supplies.at('all').value.value ?? []}
                  />
                )}
              </Once>
            )}
          </Once>
        )}
      </Once>
    </div>
  );
}
