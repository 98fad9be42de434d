import { homographyOf } from '../geometry/homography.ts';
import type { Quad } from '../geometry/points.ts';
import { rectangleQuad } from '../geometry/quad.ts';
import type { Picture } from './picture.ts';

/** A sheet laid flat, still in the light of its photo: bytes as the photo holds them. */
export interface Straightened extends Picture {
  /** The homography from its pixels to those of the photo, row by row. */
  readonly rows: readonly number[];
}

/**
 * Cuts a sheet out of the photo and lays it flat: each pixel lies between four pixels of the photo, or,
 * where the photo is finer, is the mean of several such places.
 *
 * Takes       the picture, the sheet's corners in its pixels, the size wanted, and an array to write into, if there is
 *             one that holds 3 bytes for each pixel of that size.
 */
export function straighten(
  picture: Picture,
  corners: Quad<'photo'>,
  { width, height }: { readonly width: number; readonly height: number },
  rgb = new Uint8Array(3 * width * height),
): Straightened {
  const { rows } = homographyOf(rectangleQuad<'sheet'>(0, 0, width, height), corners);
  const finer = samplesPerPixel(corners, width, height);
  if (finer === 1) sampleBlocks(picture, rows, { width, height }, rgb);
  else sampleFinely(picture, rows, { width, height }, finer, rgb);
  return { width, height, rgb, primaries: picture.primaries, rows };
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * One sample a pixel, block by block: a row of a sheet that lies aslant crosses a hundred rows of the photo, whose
 * pixels lie far apart in memory; a block stays within few.
 */
function sampleBlocks(
  picture: Picture,
  rows: readonly number[],
  { width, height }: Size,
  rgb: Uint8Array,
): void {
  const stretch = stretchOf(rows, { width, height });
  for (let top = 0; top < height; top += BLOCK)
    for (let left = 0; left < width; left += stretch) {
      const right = Math.min(width, left + stretch);
      for (let y = top, below = Math.min(height, top + BLOCK); y < below; y++)
        sampleStretch(picture, rows, y + 0.5, 1, left, right, rgb, 3 * (width * y + left));
    }
}

/** The mean of `finer` x `finer` samples a pixel. */
function sampleFinely(
  picture: Picture,
  rows: readonly number[],
  { width, height }: Size,
  finer: number,
  rgb: Uint8Array,
): void {
  const across = width * finer;
  const line = new Uint8Array(3 * across);
  const sums = new Uint16Array(3 * width);
  for (let y = 0; y < height; y++) {
    sums.fill(0);
    for (let sample = 0; sample < finer; sample++) {
      const v = y + (sample + 0.5) / finer;
      for (let left = 0; left < across; left += STRETCH) {
        const right = Math.min(across, left + STRETCH);
        sampleStretch(picture, rows, v, 1 / finer, left, right, line, 3 * left);
      }
      addGroups(sums, line, finer);
    }
    for (let at = 0, to = 3 * width * y; at < sums.length; at++, to++)
      rgb[to] = sums[at]! / (finer * finer) + 0.5;
  }
}

function samplesPerPixel(corners: Quad<'photo'>, width: number, height: number): number {
  const across = Math.hypot(corners[1].x - corners[0].x, corners[1].y - corners[0].y) / width;
  const down = Math.hypot(corners[3].x - corners[0].x, corners[3].y - corners[0].y) / height;
  return Math.max(1, Math.min(4, Math.round(Math.max(across, down))));
}

/** Sums of each `count` neighbours of a line, added to what stands there. */
function addGroups(sums: Uint16Array, line: Uint8Array, count: number): void {
  for (let to = 0, from = 0; to < sums.length; to += 3)
    for (const end = from + 3 * count; from < end; from += 3) {
      sums[to]! += line[from]!;
      sums[to + 1]! += line[from + 1]!;
      sums[to + 2]! += line[from + 2]!;
    }
}

/** Places in the photo are counted in parts of a pixel, as whole numbers. */
const BITS = 16;
/**
 * Perspective bends the even steps along a row so little that over so many samples they count as even: on a
 * sheet whose one edge looks half as long as the other, a sample is off by less than 0.05 pixels. Where the edges
 * differ by less than a quarter, so it is over twice as many.
 */
const STRETCH = 32;
const HARDLY_BENT = 1.25;

function stretchOf(rows: readonly number[], { width, height }: Size): number {
  const [g, h, i] = [rows[6]! * width, rows[7]! * height, rows[8]!];
  const depths = [i, g + i, h + i, g + h + i];
  return Math.max(...depths) < HARDLY_BENT * Math.min(...depths) ? 2 * STRETCH : STRETCH;
}
/** Rows of a block. */
const BLOCK = 64;

/** Samples the photo along a part of one row of the flat sheet, in equal steps, into `line` from `to` on. */
function sampleStretch(
  { width, height, rgb }: Picture,
  rows: readonly number[],
  v: number,
  step: number,
  left: number,
  right: number,
  line: Uint8Array,
  to: number,
): void {
  const one = 1 << BITS;
  const row = 3 * width;
  const mostX = (width - 1) * one - 1;
  const mostY = (height - 1) * one - 1;
  // What is the same along the row, and what grows by each pixel of it.
  const overX = rows[1]! * v + rows[2]!;
  const overY = rows[4]! * v + rows[5]!;
  const overW = rows[7]! * v + rows[8]!;
  const u = (left + 0.5) * step;
  const w = one / (rows[6]! * u + overW);
  const last = (right + 0.5) * step;
  const lastW = one / (rows[6]! * last + overW);
  let x = ((rows[0]! * u + overX) * w - one / 2) | 0;
  let y = ((rows[3]! * u + overY) * w - one / 2) | 0;
  const count = right - left;
  const stepX = (((rows[0]! * last + overX) * lastW - one / 2 - x) / count) | 0;
  const stepY = (((rows[3]! * last + overY) * lastW - one / 2 - y) / count) | 0;
  const end = to + 3 * count;
  const endX = (x + count * stepX) | 0;
  const endY = (y + count * stepY) | 0;
  // Only at the rim of the photo each place has to be held within it.
  const isWithin =
    Math.min(x, endX, y, endY) >= 0 && Math.max(x, endX) <= mostX && Math.max(y, endY) <= mostY;
  for (let at = to; at < end; at += 3) {
    const inX = isWithin ? x : Math.max(0, Math.min(mostX, x));
    const inY = isWithin ? y : Math.max(0, Math.min(mostY, y));
    const p = Math.imul(inY >> BITS, row) + 3 * (inX >> BITS);
    const q = p + row;
    const across = (inX >> (BITS - 8)) & 255;
    const down = (inY >> (BITS - 8)) & 255;
    const w11 = (Math.imul(across, down) + 128) >> 8;
    const w10 = across - w11;
    const w01 = down - w11;
    const w00 = 256 - across - w01;
    line[at] = (w00 * rgb[p]! + w10 * rgb[p + 3]! + w01 * rgb[q]! + w11 * rgb[q + 3]! + 128) >> 8;
    line[at + 1] =
      (w00 * rgb[p + 1]! + w10 * rgb[p + 4]! + w01 * rgb[q + 1]! + w11 * rgb[q + 4]! + 128) >> 8;
    line[at + 2] =
      (w00 * rgb[p + 2]! + w10 * rgb[p + 5]! + w01 * rgb[q + 2]! + w11 * rgb[q + 5]! + 128) >> 8;
    x = (x + stepX) | 0;
    y = (y + stepY) | 0;
  }
}
