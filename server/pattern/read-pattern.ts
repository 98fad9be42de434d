import { flatPixels } from '../colour/flat-pixels.ts';
import { labelPixels } from '../colour/label-pixels.ts';
import type { Labels } from '../colour/label-pixels.ts';
import type { LabImage } from '../colour/lab.ts';
import type { Palette } from '../colour/palette.ts';
import { autocorrelation } from './autocorrelation.ts';
import { busynessOf } from './busyness.ts';
import { describeOutlines } from './descriptor.ts';
import { directionOf } from './direction.ts';
import { channelsOf } from './grid.ts';
import { outlinesOf } from './outlines.ts';
import { FURTHEST, findRepeat } from './repeat.ts';
import { shapeSize } from './shape-size.ts';
import { shrunken } from './shrunken.ts';
import { standing } from './standing.ts';
import type { PatternTraits } from './traits.ts';

/**
 * What a print is like apart from its colours.
 *
 * Takes       a flat swatch, its palette, the size of one of its pixels on paper, and which colour of the palette
 *             each pixel shows, if that is known already.
 * Gives       repeat and scale in millimetres, direction, busyness, and a description by which `sameness`
 *             knows the same drawing in other colours.
 */
export function readPattern(
  swatch: LabImage,
  palette: Palette,
  millimetresPerPixel: number,
  labels: Labels = labelled(swatch, palette),
): PatternTraits {
  const ground = palette.colours.findIndex(({ role }) => role === 'ground');
  // Where outlines lie and what repeats is seen at half the size as well.
  const image = shrunken(swatch, Math.max(1, Math.round(swatch.width / ENOUGH)));
  const maps = channelsOf(image, FIELDS);
  const likeness = autocorrelation(maps, Math.ceil(FURTHEST * FIELDS), 2);
  const repeat = findRepeat(likeness);
  const sheet = swatch.width * millimetresPerPixel;
  const size = palette.tonal ? null : shapeSize(labels, ground);
  return {
    repeat: repeat === null ? null : (repeat * sheet) / FIELDS,
    scale: size === null ? sheet : size * millimetresPerPixel,
    ...standing(
      directionOf(labels, ground, repeat === null ? 1 : (FIELDS / repeat) ** 2),
      maps,
      likeness,
    ),
    busyness: busynessOf(
      labels,
      palette.colours.map(({ share }) => share),
      millimetresPerPixel,
    ),
    descriptor: describeOutlines(outlinesOf(image)),
  };
}

function labelled(swatch: LabImage, palette: Palette): Labels {
  const colours = palette.colours.map(({ lab }) => lab);
  return labelPixels(swatch, colours, flatPixels(swatch, 0));
}

/** Pixels across in which the outlines of a print are still seen. */
const ENOUGH = 200;
/** Fields a side of the grid in which repeats are sought. */
const FIELDS = 128;
