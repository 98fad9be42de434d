import { valueAt } from './factor.ts';
import type { Wide } from './network.ts';

/** A card of many papers whose upper tables are put right once all its slots are settled. */
export interface WideWorth {
  readonly scope: readonly number[];
  /** True worth less that of the upper tables, never above 0; `choice` is the design of each slot. */
  correction(choice: ArrayLike<number>): number;
}

export function wideWorth(wide: Wide): WideWorth {
  return {
    scope: wide.scope,
    correction(choice) {
      let lost = wide.at(choice);
      for (const factor of wide.upper) lost -= valueAt(factor, choice);
      return Math.min(0, lost);
    },
  };
}
