import type { Palette } from '../colour/palette.ts';
import type { CuttingScheme, PlacedPiece } from '../cutting/piece.ts';
import type { Layout } from '../layouts/layout.ts';
import type { Pad } from '../pad/pad.ts';
import type { Supply } from '../supplies/supply.ts';
import type { Limit } from './network/network.ts';
import type { Pin, Taste } from './plan.ts';

/** A card of the batch: its number, from 1, and its design. */
export interface AskedCard {
  readonly number: number;
  readonly layout: Layout;
}

/** All that a plan is made from. */
export interface PlanAsk {
  readonly pad: Pad;
  readonly cards: readonly AskedCard[];
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
