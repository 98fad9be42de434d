import { difference } from './difference.ts';
import { earthMover } from './earth-mover.ts';
import type { Lab } from './lab.ts';
import type { Palette } from './palette.ts';

/**
 * How far apart two palettes are as a whole: the least share of colour, times how far it has to
 * change, that turns one side's colours into the other's.
 *
 * Takes       two palettes and the distance between two colours (CIEDE2000 when none is given).
 * Gives       the mean change a unit of area, in the unit of the distance; 0 only for equal palettes.
 *             A metric when the distance is one: CIELAB distance is, CIEDE2000 is not quite.
 * Source      see `earthMover`.
 */
export function paletteDistance(
  a: Palette,
  b: Palette,
  apart: (one: Lab, other: Lab) => number = difference,
): number {
  return earthMover(
    a.colours.map(({ share }) => share),
    b.colours.map(({ share }) => share),
    (i, j) => apart(a.colours[i]!.lab, b.colours[j]!.lab),
  );
}
