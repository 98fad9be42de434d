import type { VNode } from 'preact';
import type { LayoutListing } from '../../server/contract/layouts.ts';
import type { Pad } from '../../server/contract/pads.ts';
import type { Plan } from '../../server/contract/plans.ts';
import type { Supply } from '../../server/contract/supplies.ts';
import { Once } from '../table/waiting.tsx';
import { layouts, pads, plans, supplies } from '../wire/shelves.ts';

/** A plan with all that is needed to show it. */
export interface WholePlan {
  readonly plan: Plan;
  readonly pad: Pad;
  readonly layouts: readonly LayoutListing[];
  readonly supplies: readonly Supply[];
}

/** Shows something of a plan once it, its pad and the layouts have come. */
export function WithPlan({
  pad,
  plan,
  heading,
  show,
}: {
  pad: string;
  plan: string;
  heading: string;
  show: (whole: WholePlan) => VNode;
}): VNode {
  return (
    <div class="screen">
      <Once of={plans.at(plan)} again={() => void plans.fresh(plan)} heading={heading}>
        {(made) => (
          <Once of={pads.at(pad)} again={() => void pads.fresh(pad)} heading={heading}>
            {(whole) => (
              <Once
                of={layouts.at('all')}
                again={() => void layouts.fresh('all')}
                heading={heading}
              >
                {(catalogue) =>
                  show({
                    plan: made,
                    pad: whole,
                    layouts: catalogue,
                    supplies: supplies.at('all').value.value ?? [],
                  })
                }
              </Once>
            )}
          </Once>
        )}
      </Once>
    </div>
  );
}
