import type { Palette } from '../colour/palette.ts';
import type { CuttingScheme, PlacedPiece } from '../cutting/piece.ts';
import type { BatchCard } from '../cutting/pieces-of.ts';
import type { Pad } from '../pad/pad.ts';
import type { Supply } from '../supplies/supply.ts';
import type { Limit } from './network/network.ts';
import type { Pin, Taste } from './plan.ts';

/** All that a plan is made from. */
export interface PlanAsk {
  readonly pad: Pad;
  readonly cards: readonly BatchCard[];
  readonly scheme: CuttingScheme;
  readonly supplies: readonly Supply[];
  readonly pins: readonly Pin[];
  /** Ids of sheets that must not be used. */
  readonly without: readonly string[];
  readonly taste: Taste;
  readonly seed: number;
  readonly limit: Limit;
  /** The palette of the very place that a piece is cut from, where it is known. */
  readonly shown?: (side: string, piece: PlacedPiece) => Palette | null;
}
