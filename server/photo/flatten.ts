import { encodedByte, linearOfByte } from '../colour/curves.ts';
import type { LabImage } from '../colour/lab.ts';
import { labOfLinear, linearOfLab } from '../colour/spaces.ts';
import { homographyOf } from '../geometry/homography.ts';
import type { Quad } from '../geometry/points.ts';
import { rectangleQuad } from '../geometry/quad.ts';
import type { Correction } from './correction.ts';
import type { Picture, RgbImage } from './picture.ts';

/** Linear light in the photo's primaries, three numbers a pixel. */
export interface LinearImage {
  readonly primaries: Picture['primaries'];
  readonly width: number;
  readonly height: number;
  readonly light: Float32Array;
}

/**
 * Cuts a sheet out of the photo and lays it flat, in corrected linear light.
 *
 * Takes       the picture, the sheet's corners in its pixels, the size wanted and the correction of light.
 */
export function flatten(
  picture: Picture,
  corners: Quad<'photo'>,
  size: { readonly width: number; readonly height: number },
  correct: Correction,
): LinearImage {
  const { width, height } = size;
  const sheet = rectangleQuad<'sheet'>(0, 0, width, height);
  const { rows } = homographyOf(sheet, corners);
  const light = new Float32Array(3 * width * height);
  sampleInto(light, picture, rows, width, height, samplesPerPixel(corners, width, height));
  correct(light, width, height, rows);
  return { primaries: picture.primaries, width, height, light };
}

/** Adds up `spp` x `spp` samples for each pixel of the flat picture, each between four pixels of the photo. */
function sampleInto(
  light: Float32Array,
  picture: Picture,
  [a, b, c, d, e, f, g, h, i]: readonly number[],
  width: number,
  height: number,
  spp: number,
): void {
  const { rgb } = picture;
  const row = 3 * picture.width;
  const maxX = picture.width - 1.001;
  const maxY = picture.height - 1.001;
  const part = 1 / (spp * spp);
  for (let y = 0; y < height; y++)
    for (let sample = 0; sample < spp * spp; sample++) {
      const v = y + (Math.floor(sample / spp) + 0.5) / spp;
      const first = ((sample % spp) + 0.5) / spp;
      for (let x = 0, at = 3 * y * width; x < width; x++, at += 3) {
        const u = x + first;
        const w = 1 / (g! * u + h! * v + i!);
        const px = Math.max(0, Math.min(maxX, (a! * u + b! * v + c!) * w - 0.5));
        const py = Math.max(0, Math.min(maxY, (d! * u + e! * v + f!) * w - 0.5));
        const left = px | 0;
        const top = py | 0;
        const fx = px - left;
        const fy = py - top;
        // Light adds up; encoded bytes do not. So the four pixels are weighed as light.
        const p = top * row + 3 * left;
        const q = p + row;
        const w11 = part * fx * fy;
        const w10 = part * fx - w11;
        const w01 = part * fy - w11;
        const w00 = part - part * fx - w01;
        light[at]! +=
          w00 * linearOfByte[rgb[p]!]! +
          w10 * linearOfByte[rgb[p + 3]!]! +
          w01 * linearOfByte[rgb[q]!]! +
          w11 * linearOfByte[rgb[q + 3]!]!;
        light[at + 1]! +=
          w00 * linearOfByte[rgb[p + 1]!]! +
          w10 * linearOfByte[rgb[p + 4]!]! +
          w01 * linearOfByte[rgb[q + 1]!]! +
          w11 * linearOfByte[rgb[q + 4]!]!;
        light[at + 2]! +=
          w00 * linearOfByte[rgb[p + 2]!]! +
          w10 * linearOfByte[rgb[p + 5]!]! +
          w01 * linearOfByte[rgb[q + 2]!]! +
          w11 * linearOfByte[rgb[q + 5]!]!;
      }
    }
}

function samplesPerPixel(corners: Quad<'photo'>, width: number, height: number): number {
  const across = Math.hypot(corners[1].x - corners[0].x, corners[1].y - corners[0].y) / width;
  const down = Math.hypot(corners[3].x - corners[0].x, corners[3].y - corners[0].y) / height;
  return Math.max(1, Math.min(4, Math.round(Math.max(across, down))));
}

/**
 * A flat picture made smaller, a part of it left out at the rim: each pixel is the mean of the light
 * that falls on it.
 */
export function reduced(
  image: LinearImage,
  size: { readonly width: number; readonly height: number },
  inset: number,
): LinearImage {
  const across = spansOf(image.width, size.width, inset);
  const down = spansOf(image.height, size.height, inset);
  const light = new Float32Array(3 * size.width * size.height);
  const line = new Float64Array(3 * image.width);
  for (let y = 0, to = 0; y < size.height; y++) {
    addRows(image, down, y, line);
    for (let x = 0; x < size.width; x++, to += 3) {
      let r = 0;
      let g = 0;
      let b = 0;
      const end = across.start[x + 1]!;
      for (let k = across.start[x]!, at = 3 * across.from[x]!; k < end; k++, at += 3) {
        const weight = across.weight[k]!;
        r += weight * line[at]!;
        g += weight * line[at + 1]!;
        b += weight * line[at + 2]!;
      }
      light[to] = r;
      light[to + 1] = g;
      light[to + 2] = b;
    }
  }
  return { primaries: image.primaries, ...size, light };
}

/** The rows that fall on one row of the smaller picture, each with its weight, into one line. */
function addRows({ width, light }: LinearImage, down: Spans, y: number, line: Float64Array): void {
  line.fill(0);
  const end = down.start[y + 1]!;
  for (let k = down.start[y]!, row = down.from[y]!; k < end; k++, row++) {
    const weight = down.weight[k]!;
    const first = 3 * row * width;
    for (let at = 0; at < line.length; at++) line[at]! += weight * light[first + at]!;
  }
}

/** Which pixels, and how much of each, fall on every pixel of the smaller picture along one axis. */
interface Spans {
  /** The first pixel of each. */
  readonly from: Int32Array;
  /** Where the weights of each begin; one more than there are pixels. */
  readonly start: Int32Array;
  readonly weight: Float64Array;
}

function spansOf(long: number, short: number, inset: number): Spans {
  const first = inset * long;
  const step = ((1 - 2 * inset) * long) / short;
  const from = new Int32Array(short);
  const start = new Int32Array(short + 1);
  const weight: number[] = [];
  for (let index = 0; index < short; index++) {
    const low = first + index * step;
    const high = Math.min(long, low + step);
    from[index] = Math.floor(low);
    for (let at = from[index]!; at < high; at++)
      weight.push((Math.min(high, at + 1) - Math.max(low, at)) / (high - low));
    start[index + 1] = weight.length;
  }
  return { from, start, weight: Float64Array.from(weight) };
}

/** For reading: CIELAB, nothing clipped. */
export function readingOf({ primaries, width, height, light }: LinearImage): LabImage {
  return { width, height, lab: labOfLinear(light, primaries) };
}

/** For showing: sRGB; what it cannot show is greyed just as far as needed, so that hues stay. */
export function pictureOf({ primaries, width, height, light }: LinearImage): RgbImage {
  const shown = primaries === 'srgb' ? light : linearOfLab(labOfLinear(light, primaries));
  const rgb = new Uint8Array(shown.length);
  for (let at = 0; at < shown.length; at += 3) {
    const r = shown[at]!;
    const g = shown[at + 1]!;
    const b = shown[at + 2]!;
    const least = r < g ? (r < b ? r : b) : g < b ? g : b;
    const most = r > g ? (r > b ? r : b) : g > b ? g : b;
    if (least >= 0 && most <= 1) {
      rgb[at] = encodedByte(r);
      rgb[at + 1] = encodedByte(g);
      rgb[at + 2] = encodedByte(b);
      continue;
    }
    const y = Math.max(0, Math.min(1, 0.2126 * r + 0.7152 * g + 0.0722 * b));
    const keep = Math.min(
      1,
      least < 0 ? y / Math.max(1e-9, y - least) : 1,
      most > 1 ? (1 - y) / Math.max(1e-9, most - y) : 1,
    );
    rgb[at] = encodedByte(y + keep * (r - y));
    rgb[at + 1] = encodedByte(y + keep * (g - y));
    rgb[at + 2] = encodedByte(y + keep * (b - y));
  }
  return { width, height, rgb };
}
