import { strokes } from '../colour/colour-uncertainty.ts';
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
 * What is left of the uncertainty in the difference of two colours.
 *
 * one photo: light and camera shift both alike and cancel, noise and the unevenness of the light stay.
 * Measured on tuning seeds: the error between two pictures was 3.35 times that in one.
 * two photos: each has its own light, but one camera and one white card lie behind both. Measured on 45
 * tuning tables, seeds 300 to 344: 68 % of the differences to broadly printed colours were off by less than
 * 0.48 of what two errors of their own would make, 95 % by less than 0.87; with another white card in the second
 * picture, by less than 0.96 and 1.5. Taken as one card, with a little to spare. (Measured when a colour beside a card
 * was stated 0.87 times as wide, and so told here in today's measure.)
 * typed: no photo is behind one of them, nothing cancels.
 * `npm run bench supplies` measures it on other seeds.
 */
const LEFT: Readonly<Record<Compared, number>> = {
  'one photo': 0.22,
  'two photos': 0.5,
  typed: 1,
};

/**
 * No more than this is shared, in CIEDE2000: about what a white card leaves open. What is off by more was read
 * without one, or in a light that nobody knows, and the other picture was not.
 */
const SHARED = 1.6;

/** Standard error of the difference between a supply and a colour of a side, in CIEDE2000. */
export function uncertaintyOfDifference(
  supply: Supply,
  colour: PaletteColour,
  how: Compared,
): number {
  const { inside = 1 } = colour;
  // That strokes lie further along than they look is told by their ways; only what lies beside those is left.
  const own = Math.sqrt(Math.max(0, colour.uncertainty ** 2 - strokes(inside) ** 2));
  return Math.hypot(
    left(supply.uncertainty, how),
    left(Math.max(SURE_AT_BEST, own), how),
    besideWays(colour),
  );
}

/** No colour of a photo is surer than this. */
const SURE_AT_BEST = 0.3;

function left(uncertainty: number, how: Compared): number {
  const common = how === 'one photo' ? uncertainty : Math.min(uncertainty, SHARED);
  return Math.sqrt(uncertainty ** 2 - (1 - LEFT[how] ** 2) * common ** 2);
}

/**
 * How far a colour that was read off thin strokes lies beside the ways that are told of it (see waysOf), in CIEDE2000.
 *
 * Measured    on the same tables: 2.9 where nothing of it is inside its shapes, 1 at a part of 0.12, and at 0.25 no more
 *             than of a broad one.
 */
function besideWays({ inside = 1, range }: PaletteColour): number {
  return range === undefined ? MOST_BESIDE * Math.exp(-inside / BESIDE_FADES) : 0;
}

const MOST_BESIDE = 2.9;
const BESIDE_FADES = 0.11;
