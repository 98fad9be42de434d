import { flatPixels } from '../colour/flat-pixels.ts';
import { labelPixels } from '../colour/label-pixels.ts';
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
import type { PatternTraits } from './traits.ts';

/**
 * What a print is like apart from its colours.
 *
 * Takes       a flat swatch, its palette, and the size of one of its pixels on paper.
 * Gives       repeat and scale in millimetres, direction, busyness, and a description by which `sameness`
 *             knows the same drawing in other colours.
 */
export function readPattern(
  swatch: LabImage,
  palette: Palette,
  millimetresPerSwatchPixel: number,
): PatternTraits {
  const shrink = Math.max(1, Math.round(swatch.width / ENOUGH));
  const image = shrunken(swatch, shrink);
  const millimetresPerPixel = shrink * millimetresPerSwatchPixel;
  const colours = palette.colours.map(({ lab }) => lab);
  const labels = labelPixels(image, colours, flatPixels(image, 0));
  const ground = palette.colours.findIndex(({ role }) => role === 'ground');
  const outlines = outlinesOf(image);
  const repeat = findRepeat(
    autocorrelation(channelsOf(image, FIELDS), Math.ceil(FURTHEST * FIELDS)),
  );
  const sheet = image.width * millimetresPerPixel;
  const size = palette.tonal ? null : shapeSize(labels, ground);
  return {
    repeat: repeat === null ? null : (repeat * sheet) / FIELDS,
    scale: size === null ? sheet : size * millimetresPerPixel,
    ...directionOf(labels, ground, repeat === null ? 1 : (FIELDS / repeat) ** 2),
    busyness: busynessOf(
      labels,
      palette.colours.map(({ share }) => share),
      millimetresPerPixel,
    ),
    descriptor: describeOutlines(outlines),
  };
}

/** Pixels across in which every shape of a print is still seen: half a millimetre each on a sheet of 6 in. */
const ENOUGH = 300;
/** Fields a side of the grid in which repeats are sought. */
const FIELDS = 128;
