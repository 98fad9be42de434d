import type { PaletteColour } from '../colour/palette.ts';
import type { Side } from '../pad/pad.ts';
import type { Supply } from './supply.ts';
import { spreadOfThin } from './thin.ts';

/** Where the colours that are compared come from: it decides how far their difference can be trusted. */
export type Compared = 'one photo' | 'two photos' | 'typed';

export function comparedHow(supply: Supply, side: Side): Compared {
  if (supply.photo === null) return 'typed';
  return supply.photo === side.photo ? 'one photo' : 'two photos';
}

/**
 * What is left of the uncertainty in the difference of two colours.
 *
 * one photo: light and camera shift both alike and cancel, noise and the unevenness of the light stay.
 * Measured on tuning seeds: the error between two pictures was 3.35 times that in one.
 * two photos: each has its own light, but one camera and one white card lie behind both. Measured on 11
 * tuning tables: two thirds of the differences were off by less than 0.3 of what two errors of their own
 * would make, nine tenths by less than 0.65; taken between, where most verdicts were right at no more than
 * 15 % undecided. Colours of thin strokes are widened by themselves.
 * typed: no photo is behind one of them, nothing cancels.
 * `npm run bench supplies` measures it on other seeds.
 */
const LEFT: Readonly<Record<Compared, number>> = {
  'one photo': 0.25,
  'two photos': 0.55,
  typed: 1,
};

/** Standard error of the difference between a supply and a colour of a side, in CIEDE2000. */
export function uncertaintyOfDifference(
  supply: Supply,
  colour: PaletteColour,
  how: Compared,
): number {
  const both = supply.uncertainty ** 2 + colour.uncertainty ** 2;
  return Math.sqrt(LEFT[how] ** 2 * both + spreadOfThin(colour) ** 2);
}
