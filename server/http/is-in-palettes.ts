import type { Side } from '../pad/pad.ts';
import { expected } from '../refusals/refusal.ts';

/** Refuses a place that the palette of one of the sides does not have. */
export function isInPalettes(colour: number | undefined, sides: readonly Side[]): void {
  for (const { palette } of sides)
    if (colour !== undefined && colour >= palette.colours.length)
      throw expected(
        `a place in a palette of ${palette.colours.length} colours, from 0`,
        'colour',
        colour,
        'Name a colour that every side has, or none for the nearest.',
      );
}
