import type { Lab } from '../colour/lab.ts';

export type SupplyKind = 'cardstock' | 'ink';

/** A cardstock or an ink of hers. */
export interface Supply {
  readonly id: string;
  readonly kind: SupplyKind;
  readonly name: string;
  readonly lab: Lab;
  /** Standard error of the colour in CIEDE2000. */
  readonly uncertainty: number;
  /** Photo it was read from; null when the colour was typed. */
  readonly photo: string | null;
  readonly sheets: number | null;
}
