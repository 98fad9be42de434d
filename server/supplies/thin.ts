import type { PaletteColour } from '../colour/palette.ts';

/**
 * Colours that were read off strokes so thin that most of their pixels are mixed with what is beside them.
 *
 * On 23 tuning tables of rendered photos the error of a palette colour went by the part of it that lies inside
 * its shapes: below 0.02 half of the colours were off by more than 10 CIEDE2000, from 0.1 to 0.2 by more than
 * 2, and from 0.3 on by less than 1, as they state.
 */
export function isThin({ inside = 1, share, range }: PaletteColour): boolean {
  return range === undefined && inside < INSIDE && share <= MOST_SHARE;
}

/** What thin strokes add to the standard error of a colour, in CIEDE2000, beside what lies along the mixture. */
export function spreadOfThin({ inside = 1, range }: PaletteColour): number {
  return range === undefined ? MOST_SPREAD * Math.exp(-inside / FADES) : 0;
}

const INSIDE = 0.3;
/** A colour that fills more of a side is not all thin strokes. */
const MOST_SHARE = 0.45;
/** Fitted on the same tables: most verdicts right at no more than 15 % undecided. */
const MOST_SPREAD = 2;
const FADES = 0.12;
