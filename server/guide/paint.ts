import type { Extent } from './drawing.ts';

/** What a layer shows: a part of a paper's swatch, or one flat colour. */
export type Paint = PaperPaint | ColourPaint;

export interface PaperPaint {
  readonly kind: 'paper';
  /** Address of the swatch picture. */
  readonly href: string;
  /** Size of the whole swatch in mm. */
  readonly swatch: Extent;
  /** Upper left corner, on the swatch, of the part that is cut out, in mm. */
  readonly x: number;
  readonly y: number;
  /** How far, clockwise, that part is turned to lie on the card. */
  readonly turned: Turn;
}

export type Turn = 0 | 90 | 180 | 270;

export interface ColourPaint {
  readonly kind: 'colour';
  readonly hex: string;
}
