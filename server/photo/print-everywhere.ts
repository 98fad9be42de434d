import type { LabImage } from '../colour/lab.ts';
import { autocorrelation } from '../pattern/autocorrelation.ts';
import { channelsOf } from '../pattern/grid.ts';
import type { Grid } from '../pattern/grid.ts';
import { repeatsAlong } from '../pattern/repeat.ts';

/**
 * Whether one print fills the picture from rim to rim: it comes again and again, across and down, in every part alike.
 * Its checks and tiles are four-cornered and lie in rows on a ground, just as sheets lie on a table.
 *
 * A table with sheets on it is not so: along the rim the table shows, and nowhere is it like the sheets one repeat further
 * on. Nor is a sheet that fills the picture but for a border of table, or lies on a patterned cloth.
 *
 * Takes       the preview.
 * Good up to  prints that repeat at least two and a half times in the picture, both ways; others have no such rows.
 */
export function isPrintEverywhere(image: LabImage): boolean {
  const maps = channelsOf(image, FIELDS);
  // Where a table is bare along the rim or between sheets, even a block that holds any repeat there may be does not show it: most pictures end here.
  if (isBareIn(maps, LARGE)) return false;
  const { across, down } = repeatsAlong(autocorrelation(maps, FURTHEST_REPEAT + 2, 2));
  if (across === null || down === null || Math.max(across, down) > FURTHEST_REPEAT) return false;
  const side = Math.max(across, down) > SMALL ? LARGE : SMALL;
  if (isBareIn(maps, side)) return false;
  const isOff = (block: Block, x: number, y: number): boolean =>
    offIn(maps, block, { x, y }) > UNLIKE * spreadIn(maps, block);
  return (
    !blocksOf(side).some((block) => isOff(block, across, 0) || isOff(block, 0, down)) &&
    !RIMS.some((rim) => (rim.width < rim.height ? isOff(rim, across, 0) : isOff(rim, 0, down)))
  );
}

/** Fields a side of the picture, whatever its shape. */
const FIELDS = 128;
/** Fields a side of the blocks of which all have to show the print: about a repeat or more, a small part of a sheet. */
const SMALL = 16;
const LARGE = 32;
/** So far may a block look for itself on one of both sides. */
const FURTHEST_REPEAT = (FIELDS - LARGE) / 2;
/** A block has at least this part of the variance of the usual one ... */
const BUSY = 0.25;
/** ... one row of fields along the rim has less, if it runs along one row of checks ... */
const ALONG = 0.1;
/** ... and is off itself, one repeat further on, by at most this part of its own: unrelated fields are off by twice that. */
const UNLIKE = 1;

interface Block {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The outermost fields on each side, where the narrowest border of table shows. */
const RIMS: readonly Block[] = [
  { x: 0, y: 0, width: FIELDS, height: 1 },
  { x: 0, y: FIELDS - 1, width: FIELDS, height: 1 },
  { x: 0, y: 0, width: 1, height: FIELDS },
  { x: FIELDS - 1, y: 0, width: 1, height: FIELDS },
];

/** Blocks all over the picture, each lying over half of the next. */
function blocksOf(side: number): Block[] {
  const blocks: Block[] = [];
  for (let y = 0; y + side <= FIELDS; y += side / 2)
    for (let x = 0; x + side <= FIELDS; x += side / 2)
      blocks.push({ x, y, width: side, height: side });
  return blocks;
}

function isBareIn(maps: readonly Grid[], side: number): boolean {
  const spread = blocksOf(side)
    .map((block) => spreadIn(maps, block))
    .sort((p, q) => p - q);
  const usual = spread[spread.length >> 1]!;
  return spread[0]! <= BUSY * usual || RIMS.some((rim) => spreadIn(maps, rim) <= ALONG * usual);
}

/** The variance of the fields of a block, over all maps together. */
function spreadIn(maps: readonly Grid[], { x, y, width, height }: Block): number {
  let variance = 0;
  for (const { values } of maps) {
    let [sum, squares] = [0, 0];
    for (let row = y; row < y + height; row++)
      for (let at = row * FIELDS + x, end = at + width; at < end; at++) {
        sum += values[at]!;
        squares += values[at]! ** 2;
      }
    const mean = sum / (width * height);
    variance += squares / (width * height) - mean ** 2;
  }
  return variance;
}

/**
 * Mean square by which a block is off the fields one repeat further on, or back where the picture ends, less what both
 * are off as a whole: the light slopes.
 */
function offIn(
  maps: readonly Grid[],
  { x, y, width, height }: Block,
  repeat: { readonly x: number; readonly y: number },
): number {
  const towards = (end: number, by: number): number => (end + Math.ceil(by) <= FIELDS ? by : -by);
  const [right, below] = [towards(x + width, repeat.x), towards(y + height, repeat.y)];
  let off = 0;
  for (const map of maps) {
    let [sum, squares] = [0, 0];
    for (let row = y; row < y + height; row++)
      for (let column = x; column < x + width; column++) {
        const apart =
          map.values[row * FIELDS + column]! - valueAt(map, column + right, row + below);
        sum += apart;
        squares += apart ** 2;
      }
    off += squares / (width * height) - (sum / (width * height)) ** 2;
  }
  return off;
}

/** Between two fields, of which one axis is whole. */
function valueAt({ side, values }: Grid, x: number, y: number): number {
  const [left, top] = [Math.max(0, Math.floor(x)), Math.max(0, Math.floor(y))];
  const at = top * side + left;
  const [alongX, alongY] = [x - left, y - top];
  if (alongX > 0) return values[at]! * (1 - alongX) + values[at + 1]! * alongX;
  return alongY > 0 ? values[at]! * (1 - alongY) + values[at + side]! * alongY : values[at]!;
}
