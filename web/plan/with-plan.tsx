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

/** Shows something of a plan once it, its pad, the layouts and the shelf have come. */
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
  // All are asked for at once, not one after the other.
  const wanted = {
    plan: plans.at(plan),
    pad: pads.at(pad),
    layouts: layouts.at('all'),
    supplies: supplies.at('all'),
  };
  return (
    <div class="screen">
      <Once of={wanted.plan} again={() => void plans.fresh(plan)} heading={heading}>
        {(made) => (
          <Once of={wanted.pad} again={() => void pads.fresh(pad)} heading={heading}>
            {(whole) => (
              <Once of={wanted.layouts} again={() => void layouts.fresh('all')} heading={heading}>
                {(catalogue) => (
                  <Once
                    of={wanted.supplies}
                    again={() => void supplies.fresh('all')}
                    heading={heading}
                  >
                    {(shelf) =>
                      show({ plan: made, pad: whole, layouts: catalogue, supplies: shelf })
                    }
                  </Once>
                )}
              </Once>
            )}
          </Once>
        )}
      </Once>
    </div>
  );
}
