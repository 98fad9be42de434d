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
  /** The light mirrored in so much of it that the photo cannot tell its colour. */
  readonly glossy?: boolean;
}

/** A typed colour is as sure as her screen or her chart: about one step that the eye just sees (a judgement, no source). */
export const TYPED_COLOUR = 1;
