import type { Role, Shape } from '../layouts/layout.ts';
import type { Length, Size } from '../lengths/length.ts';

/** One part of one layer of one card. */
export interface Piece {
  readonly id: string;
  /** Number of the card in the batch, from 1. */
  readonly card: number;
  readonly layer: string;
  readonly role: Role;
  /** The rectangle that is cut; of a slanted or round piece, the one around it. */
  readonly size: Size;
  readonly shape: Shape;
  /**
   * The `paper` of the layer, a key within its card: pieces with the same `card` and `paper` come from
   * one sheet, pieces with the same `card` and another `paper` from different sheets. Between cards
   * the key says nothing.
   */
  readonly paper: string;
  /** What its layer is called, where that is not its id in words. */
  readonly called?: string;
  /** When true the piece is never turned by a quarter. */
  readonly keepUp?: boolean;
}

/** A piece on its sheet: upper left corner from the sheet's; `turned` when width and height are swapped. */
export interface PlacedPiece {
  readonly piece: Piece;
  readonly x: Length;
  readonly y: Length;
  readonly turned: boolean;
  /** Of two equal triangles that share this rectangle. */
  readonly pair?: Pair;
}

/** Degrees clockwise. */
export type Spin = 0 | 90 | 180 | 270;

/** Two triangles cut from one rectangle, by a cut from corner to corner. */
export interface Pair {
  /** Id of the other triangle. */
  readonly with: string;
  /** How this one is turned, clockwise, against how the rectangle lies; 0 for the first of the two. */
  readonly spin: Spin;
}

/**
 * Edge-to-edge cuts as a tree. `at` is measured from the left (vertical cut) or upper (horizontal cut)
 * edge of the part that is cut; `first` is the left or upper part.
 */
export type CutTree =
  | {
      readonly kind: 'piece';
      readonly piece: string;
      /** The second of two triangles that are cut apart last. */
      readonly twin?: string;
    }
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
