import { useEffect } from 'preact/hooks';
import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { Link } from '../table/link.tsx';
import { Once } from '../table/waiting.tsx';
import { words } from '../words.ts';
import { layouts, pads, plans, supplies } from '../wire/shelves.ts';
import { rememberPlan } from './made.ts';
import { PlanTable } from './plan-table.tsx';

/** The plan: every card with the real papers. */
export function PlanScreen({ pad, plan }: { pad: string; plan: string | null }): VNode {
  useEffect(() => {
    if (plan !== null) rememberPlan(pad, plan);
  }, [pad, plan]);
  if (plan === null) return <NoPlan pad={pad} />;
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

function NoPlan({ pad }: { pad: string }): VNode {
  return (
    <div class="screen empty">
      <h1>{words.plan.noneTitle}</h1>
      <p class="lead">{words.plan.none}</p>
      <Link to={{ at: 'cards', pad, plan: null }} class="button">
        {words.plan.toCards} <Icon name="next" />
      </Link>
    </div>
  );
}
