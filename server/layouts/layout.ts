import type { Length, Size } from '../lengths/length.ts';

/** What a layer does on the card. */
export type Role = 'base' | 'mat' | 'panel' | 'strip' | 'focal' | 'greeting';

/** What a layer is cut from. */
export type Material = 'patterned' | 'cardstock';

/** An upright box on the card front; x and y of its upper left corner, measured from the front's. */
export interface Box {
  readonly x: Length;
  readonly y: Length;
  readonly width: Length;
  readonly height: Length;
}

/**
 * The outline of a layer, inside `box`:
 * rectangle — the whole box; rounded — corners of `radius`; circle — the inscribed ellipse;
 * slanted — a strip with parallel slanted ends or sides: the points at fractions of the box, clockwise;
 * triangle — likewise three points; banner — a rectangle with a notch of `notch` cut into its right end.
 */
export type Shape =
  | { readonly kind: 'rectangle' }
  | { readonly kind: 'rounded'; readonly radius: Length }
  | { readonly kind: 'circle' }
  | { readonly kind: 'banner'; readonly notch: Length }
  | { readonly kind: 'corners'; readonly points: readonly BoxPoint[] };

/** A corner measured from the upper left of the layer's box. */
export interface BoxPoint {
  readonly x: Length;
  readonly y: Length;
}

export interface Layer {
  readonly id: string;
  readonly role: Role;
  readonly material: Material;
  readonly box: Box;
  readonly shape: Shape;
  /** Layers of one group take the same paper; layers of different groups on a card take different ones. */
  readonly paper: string;
  /** What she calls it; left out where it is called by its id or by what it is. */
  readonly called?: string;
}

export interface Fold {
  /**
   * side: opens like a book; top: like a notepad; tent: stands; gate: two flaps meet; flap: half a front,
   * cut free beside the fold; none: flat card.
   */
  readonly kind: 'none' | 'side' | 'top' | 'tent' | 'gate' | 'flap';
  /** The flat sheet before folding. */
  readonly flat: Size;
  /** Score lines on the flat sheet, measured from its left (or top, for fold kinds top and tent) edge. */
  readonly scores: readonly Length[];
  readonly scoreFrom: 'left' | 'top';
}

/** Something stamped on a layer, or cut by a die and glued onto it: its place and size on the card front. */
export interface Element {
  readonly id: string;
  readonly kind: 'stamp' | 'die-cut';
  readonly layer: string;
  readonly box: Box;
}

/** A card design. Layers are in order of stacking, the lowest first; the first has role base. */
export interface Layout {
  readonly id: string;
  readonly name: string;
  readonly card: Size;
  readonly fold: Fold;
  readonly layers: readonly Layer[];
  /** Left out when there are none. They take no paper of the pad. */
  readonly elements?: readonly Element[];
}
