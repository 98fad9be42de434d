import type { Labels } from './label-pixels.ts';
import type { Palette } from './palette.ts';

/** Where on a side its colours lie: a grid of cells, row by row, each the number of a palette colour as one letter. */
export interface ColourMap {
  readonly width: number;
  readonly height: number;
  readonly of: string;
}

/** Cells along each edge of the map: 2.4 mm on a sheet of 6 x 6 in. */
const CELLS = 64;
const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

/**
 * The map of a swatch whose pixels carry the numbers of palette colours.
 *
 * A cell shows one colour, and what it leaves out is carried on to the cells that follow, so that counting the
 * cells of any part of the side gives the areas of its colours there, also where several share a cell.
 *
 * Method      error diffusion with the weights of Floyd and Steinberg (1976), Proc. SID 17, 75-77, a colour at a time.
 */
export function colourMapOf({ width, height, of }: Labels, colours: number): ColourMap {
  const counts = new Float64Array(CELLS * CELLS * colours);
  for (let y = 0, pixel = 0; y < height; y++) {
    const row = Math.floor((y * CELLS) / height) * CELLS;
    for (let x = 0; x < width; x++, pixel++)
      counts[(row + Math.floor((x * CELLS) / width)) * colours + of[pixel]!]!++;
  }
  let letters = '';
  const left = new Float64Array(colours);
  const shares = (cell: number): Float64Array =>
    counts.subarray(cell * colours, (cell + 1) * colours);
  for (let cell = 0; cell < CELLS * CELLS; cell++) toShares(shares(cell));
  for (let y = 0; y < CELLS; y++)
    for (let x = 0; x < CELLS; x++) {
      left.set(shares(y * CELLS + x));
      const shown = greatest(left);
      letters += LETTERS.charAt(shown);
      left[shown]! -= 1;
      for (const [dx, dy, weight] of CARRIED) {
        if (x + dx < 0 || x + dx >= CELLS || y + dy >= CELLS) continue;
        const to = shares((y + dy) * CELLS + x + dx);
        for (let colour = 0; colour < colours; colour++) to[colour]! += weight * left[colour]!;
      }
    }
  return { width: CELLS, height: CELLS, of: letters };
}

const CARRIED = [
  [1, 0, 7 / 16],
  [-1, 1, 3 / 16],
  [0, 1, 5 / 16],
  [1, 1, 1 / 16],
] as const;

function toShares(counts: Float64Array): void {
  const sum = counts.reduce((total, count) => total + count, 0);
  if (sum > 0) for (let at = 0; at < counts.length; at++) counts[at]! /= sum;
}

function greatest(values: Float64Array): number {
  let best = 0;
  for (let at = 1; at < values.length; at++) if (values[at]! > values[best]!) best = at;
  return best;
}

/** A part of a side: its corner and its size, in parts of the side's own width and height. */
export interface PartOfSide {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Roots of shares are told in steps of this, so that places which show nearly the same count as the same. */
const STEP = 1 / 20;

/**
 * The share of each colour of a palette within a part of the side; null when it is not known where they lie, or when
 * the part is smaller than a cell. The shares add up to 1.
 */
export function sharesWithin({ colours, where }: Palette, part: PartOfSide): number[] | null {
  if (where === undefined) return null;
  const counts = new Array<number>(colours.length).fill(0);
  let sum = 0;
  for (let y = 0; y < where.height; y++) {
    if (!isWithin((y + 0.5) / where.height, part.y, part.height)) continue;
    for (let x = 0; x < where.width; x++) {
      if (!isWithin((x + 0.5) / where.width, part.x, part.width)) continue;
      counts[LETTERS.indexOf(where.of.charAt(y * where.width + x))]!++;
      sum++;
    }
  }
  if (sum === 0) return null;
  const stepped = counts.map((count) => (STEP * Math.round(Math.sqrt(count / sum) / STEP)) ** 2);
  const total = stepped.reduce((whole, share) => whole + share, 0);
  return stepped.map((share) => share / total);
}

function isWithin(at: number, from: number, length: number): boolean {
  return at >= from && at < from + length;
}
