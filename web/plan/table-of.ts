import type { LayoutListing } from '../../server/contract/layouts.ts';
import type { Pad } from '../../server/contract/pads.ts';
import type { Plan } from '../../server/contract/plans.ts';
import type { Supply } from '../../server/contract/supplies.ts';

/** Everything that a plan speaks of, together on the table. */
export interface OnTable {
  readonly plan: Plan;
  readonly pad: Pad;
  readonly layouts: readonly LayoutListing[];
  readonly supplies: readonly Supply[];
}
