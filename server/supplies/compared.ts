import type { PaletteColour } from '../colour/palette.ts';
import type { Side } from '../pad/pad.ts';
import type { Supply } from './supply.ts';

/** Where the colours that are compared come from: it decides how far their difference can be trusted. */
export type Compared = 'one photo' | 'two photos' | 'typed';

export function comparedHow(supply: Supply, side: Side): Compared {
  if (supply.photo === null) return 'typed';
  return supply.photo === side.photo ? 'one photo' : 'two photos';
}

/**
 * What is left of the uncertainty when both colours lie in one picture: light and camera shift both
 * alike and cancel in the difference, noise and the unevenness of the light stay.
 * Measured on tuning seeds: the error between two pictures was 3.35 times that in one;
 * `npm run bench supplies` measures it on others.
 */
export const LEFT_IN_ONE_PHOTO = 0.3;

/** Standard error of the difference between a supply and a colour of a side, in CIEDE2000. */
export function uncertaintyOfDifference(
  supply: Supply,
  colour: PaletteColour,
  how: Compared,
): number {
  const both = Math.hypot(supply.uncertainty, colour.uncertainty);
  return how === 'one photo' ? LEFT_IN_ONE_PHOTO * both : both;
}
