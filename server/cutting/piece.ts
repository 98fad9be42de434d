import type { Length, Size } from '../lengths/length.ts';
import type { Shape } from '../layouts/layout.ts';

/** One part of one layer of one card. */
export interface Piece {
  readonly id: string;
  /** Number of the card in the batch, from 1. */
  readonly card: number;
  readonly layer: string;
  readonly size: Size;
  readonly shape: Shape;
  /** Pieces of one card with the same group come from the same sheet and side, others from different sheets. */
  readonly paper: string;
}

/** A piece on its sheet: upper left corner from the sheet's; `turned` when width and height are swapped. */
export interface PlacedPiece {
  readonly piece: Piece;
  readonly x: Length;
  readonly y: Length;
  readonly turned: boolean;
}

/**
 * Edge-to-edge cuts as a tree. `at` is measured from the left (vertical cut) or upper (horizontal cut)
 * edge of the part that is cut; `first` is the left or upper part.
 */
export type CutTree =
  | { readonly kind: 'piece'; readonly piece: string }
  | { readonly kind: 'rest'; readonly size: Size }
  | {
      readonly kind: 'cut';
      readonly way: 'vertical' | 'horizontal';
      readonly at: Length;
      readonly first: CutTree;
      readonly second: CutTree;
    };

/** One sheet's worth of pieces. */
export interface Slot {
  readonly id: string;
  readonly pieces: readonly PlacedPiece[];
  readonly cuts: CutTree;
}

/** All slots of a batch on one kind of sheet. */
export interface CuttingScheme {
  readonly sheet: Size;
  readonly slots: readonly Slot[];
  /** No scheme needs fewer sheets than this. */
  readonly fewestSheets: number;
  readonly proven: boolean;
}
