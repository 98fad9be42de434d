import { labOfBytes } from '../colour/spaces.ts';
import type { Picture } from './picture.ts';
import { median } from './surface.ts';

/**
 * Along how many sides of a picture, 0 to 4, a plain strip of another colour than the rest runs: the table beside a sheet
 * that goes out of it on another side.
 *
 *     +-----------------+
 *     |                 |   bare
 *     | * * * * * |     |
 *     |* * * * * *|     |   plain along most of the right side, and not of the print's ground
 *     | * * * * * |     |
 *     +-----------------+
 *
 * Good up to  a table of one colour, a tenth of the picture wide; a border printed on the sheet is as plain.
 */
export function bareSides(preview: Picture): number {
  const ground = colourOf(preview, DEEP, DEEP, 1 - 2 * DEEP, 1 - 2 * DEEP);
  const sides = [0, 1, 2, 3].map((side) =>
    Array.from({ length: PARTS }, (_, part) => {
      const [along, wide] = [part / PARTS, 1 / PARTS];
      const deep = side % 2 === 0 ? SKIN : 1 - DEEP;
      return side < 2
        ? colourOf(preview, along, deep, wide, DEEP - SKIN)
        : colourOf(preview, deep, along, DEEP - SKIN, wide);
    }),
  );
  return sides.filter((parts) => {
    const bare = parts.filter(
      ({ middle, strays }) =>
        strays < STRAYS && Math.hypot(...middle.map((v, k) => v - ground.middle[k]!)) > ANOTHER,
    );
    return bare.length >= MOST * PARTS;
  }).length;
}

/** Parts of the picture: how deep a strip is looked at, and what is left out at the very rim. */
const DEEP = 0.08;
const SKIN = 0.01;
/** Parts along a side, and the share of them that has to be bare. */
const PARTS = 8;
const MOST = 0.7;
const SAMPLES = 16;
/** CIELAB units from the middle colour: the grain and the light of a table stay within. */
const NEAR = 10;
const STRAYS = 0.04;
/** CIELAB units by which a table parts from the ground of a print. */
const ANOTHER = 8;

interface Shown {
  readonly middle: readonly number[];
  /** Part of the samples that is of another colour. */
  readonly strays: number;
}

function colourOf(
  { width, height, rgb, primaries }: Picture,
  left: number,
  top: number,
  wide: number,
  high: number,
): Shown {
  const bytes = new Uint8Array(3 * SAMPLES * SAMPLES);
  for (let j = 0, to = 0; j < SAMPLES; j++)
    for (let i = 0; i < SAMPLES; i++, to += 3) {
      const x = Math.min(width - 1, Math.floor(width * (left + (wide * (i + 0.5)) / SAMPLES)));
      const y = Math.min(height - 1, Math.floor(height * (top + (high * (j + 0.5)) / SAMPLES)));
      const at = 3 * (y * width + x);
      bytes.set(rgb.subarray(at, at + 3), to);
    }
  const lab = labOfBytes(bytes, primaries);
  const axis = (k: number): number[] =>
    Array.from({ length: SAMPLES * SAMPLES }, (_, i) => lab[3 * i + k]!);
  const [l, a, b] = [axis(0), axis(1), axis(2)];
  const middle = [median(l), median(a), median(b)];
  const strays = l.filter(
    (value, i) => Math.hypot(value - middle[0]!, a[i]! - middle[1]!, b[i]! - middle[2]!) > NEAR,
  ).length;
  return { middle, strays: strays / l.length };
}
