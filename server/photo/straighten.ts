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
 * Takes       the picture, the sheet's corners in its pixels, and the size wanted.
 */
export function straighten(
  picture: Picture,
  corners: Quad<'photo'>,
  { width, height }: { readonly width: number; readonly height: number },
): Straightened {
  const { rows } = homographyOf(rectangleQuad<'sheet'>(0, 0, width, height), corners);
  const rgb = new Uint8Array(3 * width * height);
  const finer = samplesPerPixel(corners, width, height);
  const line = new Uint8Array(3 * width * finer);
  const sums = new Uint16Array(3 * width);
  for (let y = 0; y < height; y++) {
    if (finer === 1) {
      sampleRow(picture, rows, y + 0.5, 1, rgb.subarray(3 * width * y, 3 * width * (y + 1)));
      continue;
    }
    sums.fill(0);
    for (let sample = 0; sample < finer; sample++) {
      sampleRow(picture, rows, y + (sample + 0.5) / finer, 1 / finer, line);
      addGroups(sums, line, finer);
    }
    for (let at = 0, to = 3 * width * y; at < sums.length; at++, to++)
      rgb[to] = sums[at]! / (finer * finer) + 0.5;
  }
  return { width, height, rgb, primaries: picture.primaries, rows };
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
 * sheet whose one edge looks half as long as the other, a sample is off by less than 0.05 pixels.
 */
const STRETCH = 32;

/** Samples the photo along one row of the flat sheet, from its left edge in equal steps. */
function sampleRow(
  { width, height, rgb }: Picture,
  [a, b, c, d, e, f, g, h, i]: readonly number[],
  v: number,
  step: number,
  line: Uint8Array,
): void {
  const one = 1 << BITS;
  const row = 3 * width;
  const mostX = (width - 1) * one - 1;
  const mostY = (height - 1) * one - 1;
  for (let begin = 0; begin < line.length; begin += 3 * STRETCH) {
    const end = Math.min(line.length, begin + 3 * STRETCH);
    const u = (begin / 3 + 0.5) * step;
    const w = one / (g! * u + h! * v + i!);
    const last = (end / 3 + 0.5) * step;
    const lastW = one / (g! * last + h! * v + i!);
    let x = ((a! * u + b! * v + c!) * w - one / 2) | 0;
    let y = ((d! * u + e! * v + f!) * w - one / 2) | 0;
    const stepX = ((3 * ((a! * last + b! * v + c!) * lastW - one / 2 - x)) / (end - begin)) | 0;
    const stepY = ((3 * ((d! * last + e! * v + f!) * lastW - one / 2 - y)) / (end - begin)) | 0;
    for (let at = begin; at < end; at += 3, x += stepX, y += stepY) {
      const inX = x < 0 ? 0 : x > mostX ? mostX : x;
      const inY = y < 0 ? 0 : y > mostY ? mostY : y;
      const p = (inY >> BITS) * row + 3 * (inX >> BITS);
      const q = p + row;
      const fx = (inX >> (BITS - 8)) & 255;
      const fy = (inY >> (BITS - 8)) & 255;
      const w11 = (fx * fy + 128) >> 8;
      const w10 = fx - w11;
      const w01 = fy - w11;
      const w00 = 256 - fx - w01;
      line[at] = (w00 * rgb[p]! + w10 * rgb[p + 3]! + w01 * rgb[q]! + w11 * rgb[q + 3]! + 128) >> 8;
      line[at + 1] =
        (w00 * rgb[p + 1]! + w10 * rgb[p + 4]! + w01 * rgb[q + 1]! + w11 * rgb[q + 4]! + 128) >> 8;
      line[at + 2] =
        (w00 * rgb[p + 2]! + w10 * rgb[p + 5]! + w01 * rgb[q + 2]! + w11 * rgb[q + 5]! + 128) >> 8;
    }
  }
}
