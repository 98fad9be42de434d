import { useEffect } from 'preact/hooks';
import type { VNode } from 'preact';
import { Once } from '../table/waiting.tsx';
import { words } from '../words.ts';
import { layouts, pads, plans, supplies } from '../wire/shelves.ts';
import { LatestPlan } from './latest-plan.tsx';
import { rememberPlan } from './made.ts';
import { PlanTable } from './plan-table.tsx';

/** The plan: every card with the real papers. */
export function PlanScreen({ pad, plan }: { pad: string; plan: string | null }): VNode {
  useEffect(() => {
    if (plan !== null) rememberPlan(pad, plan);
  }, [pad, plan]);
  if (plan === null) return <LatestPlan pad={pad} at="plan" />;
  return (
    <div class="screen">
      <Once of={plans.at(plan)} again={() => void plans.fresh(plan)} heading={words.stations.plan}>
        {(made) => (
          <Once of={pads.at(pad)} again={() => void pads.fresh(pad)} heading={words.stations.plan}>
            {(whole) => (
              <Once
                of={layouts.at('all')}
                again={() => void layouts.fresh('all')}
                heading={words.stations.plan}
              >
                {(catalogue) => (
                  <PlanTable
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
