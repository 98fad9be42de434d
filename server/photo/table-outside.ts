import { labOfBytes } from '../colour/spaces.ts';
import type { Picture } from './picture.ts';
import type { Line } from './side-lines.ts';
import { shadeOfTable } from './table-colours.ts';
import type { TableColours } from './table-colours.ts';

/**
 * The part of a line, 0 to 1, with table just outside it and none just inside: the border of a sheet. Table in the
 * shadow of sheets counts as table, so that a gap of 2 mm is one and the edge of a shadow is none.
 *
 *      outside   . . . . . . . .     looked at 0.7 and 1.2 mm off a side of 152 mm
 *              --------------------- the line
 *      inside    . . . . . . . .
 *
 * Takes       the large picture, a line in its pixels with the sheet to its right as it runs, the table's colours, and
 *             the picture's pixels for each one of the preview.
 */
export function tableOutside(
  picture: Picture,
  { from, to }: Line,
  colours: TableColours,
  perPreview: number,
): number {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const out = { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
  const shadeAt = (x: number, y: number, by: number): number => {
    const px = Math.floor(x + by * out.x);
    const py = Math.floor(y + by * out.y);
    if (px < 1 || py < 1 || px >= picture.width - 1 || py >= picture.height - 1) return 0;
    return shadeOfTable(
      colours,
      labAround(picture, px, py),
      Math.floor(px / perPreview),
      Math.floor(py / perPreview),
    );
  };
  const near = Math.max(1.6, NEAR * length);
  const far = Math.max(3, FAR * length);
  let sum = 0;
  for (let i = 0; i < PLACES; i++) {
    const t = 0.04 + (0.92 * (i + 0.5)) / PLACES;
    const x = from.x + t * (to.x - from.x);
    const y = from.y + t * (to.y - from.y);
    const isOutside = shadeAt(x, y, near) > 0 || shadeAt(x, y, far) > 0;
    if (isOutside && shadeAt(x, y, -near) === 0 && shadeAt(x, y, -far) === 0) sum++;
  }
  return sum / PLACES;
}

const PLACES = 40;
/** Parts of a side at which is looked beside it: both within a gap of 2 mm. */
const NEAR = 0.0045;
const FAR = 0.008;

const nine = new Uint8Array(3);
const one = new Float32Array(3);

/** The mean of three by three pixels, in CIELAB. */
function labAround(
  { width, rgb, primaries }: Picture,
  x: number,
  y: number,
): readonly [number, number, number] {
  for (let channel = 0; channel < 3; channel++) {
    let sum = 0;
    for (let row = y - 1; row <= y + 1; row++)
      for (let at = 3 * (row * width + x - 1) + channel, end = at + 9; at < end; at += 3)
        sum += rgb[at]!;
    nine[channel] = sum / 9 + 0.5;
  }
  labOfBytes(nine, primaries, one);
  return [one[0]!, one[1]!, one[2]!];
}
