import { linearOfByte } from '../colour/curves.ts';
import type { LabImage } from '../colour/lab.ts';
import { bytesOfLinear, labOfLinear, linearOfLab } from '../colour/spaces.ts';
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
 * Takes       the picture, the sheet's corners in its pixels, the size wanted, the part of each side
 *             left out at the rim, and the correction of light (asked in pixels of the picture).
 */
export function flatten(
  picture: Picture,
  corners: Quad<'photo'>,
  size: { readonly width: number; readonly height: number },
  inset: number,
  correct: Correction,
): LinearImage {
  const { width, height } = size;
  const rim = { x: (inset * width) / (1 - 2 * inset), y: (inset * height) / (1 - 2 * inset) };
  const sheet = rectangleQuad<'sheet'>(-rim.x, -rim.y, width + 2 * rim.x, height + 2 * rim.y);
  const [a, b, c, d, e, f, g, h, i] = homographyOf(sheet, corners).rows;
  const spp = samplesPerPixel(corners, width, height);
  const light = new Float32Array(3 * width * height);
  const sum = new Float64Array(3);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      sum.fill(0);
      for (let sy = 0; sy < spp; sy++)
        for (let sx = 0; sx < spp; sx++) {
          const u = x + (sx + 0.5) / spp;
          const v = y + (sy + 0.5) / spp;
          const w = 1 / (g * u + h * v + i);
          addLight(picture, (a * u + b * v + c) * w - 0.5, (d * u + e * v + f) * w - 0.5, sum);
        }
      const at = 3 * (y * width + x);
      for (let k = 0; k < 3; k++) light[at + k] = sum[k]! / (spp * spp);
    }
  correct(light, width, height, [a, b, c, d, e, f, g, h, i]);
  return { primaries: picture.primaries, width, height, light };
}

function samplesPerPixel(corners: Quad<'photo'>, width: number, height: number): number {
  const across = Math.hypot(corners[1].x - corners[0].x, corners[1].y - corners[0].y) / width;
  const down = Math.hypot(corners[3].x - corners[0].x, corners[3].y - corners[0].y) / height;
  return Math.max(1, Math.min(4, Math.round(Math.max(across, down))));
}

/** Adds the light between four pixels, weighed by nearness; light adds up, encoded bytes do not. */
function addLight({ width, height, rgb }: Picture, x: number, y: number, sum: Float64Array): void {
  const cx = x < 0 ? 0 : x > width - 1.001 ? width - 1.001 : x;
  const cy = y < 0 ? 0 : y > height - 1.001 ? height - 1.001 : y;
  const left = cx | 0;
  const top = cy | 0;
  const fx = cx - left;
  const fy = cy - top;
  const p = 3 * (top * width + left);
  const q = p + 3 * width;
  const w00 = (1 - fx) * (1 - fy);
  const w10 = fx * (1 - fy);
  const w01 = (1 - fx) * fy;
  const w11 = fx * fy;
  for (let k = 0; k < 3; k++)
    sum[k]! +=
      w00 * linearOfByte[rgb[p + k]!]! +
      w10 * linearOfByte[rgb[p + 3 + k]!]! +
      w01 * linearOfByte[rgb[q + k]!]! +
      w11 * linearOfByte[rgb[q + 3 + k]!]!;
}

/** For reading: CIELAB, nothing clipped. */
export function readingOf({ primaries, width, height, light }: LinearImage): LabImage {
  return { width, height, lab: labOfLinear(light, primaries) };
}

/** For showing: sRGB; what it cannot show is greyed just as far as needed, so that hues stay. */
export function pictureOf({ primaries, width, height, light }: LinearImage): RgbImage {
  const shown =
    primaries === 'srgb' ? Float32Array.from(light) : linearOfLab(labOfLinear(light, primaries));
  for (let at = 0; at < shown.length; at += 3) {
    const r = shown[at]!;
    const g = shown[at + 1]!;
    const b = shown[at + 2]!;
    const least = Math.min(r, g, b);
    const most = Math.max(r, g, b);
    if (least >= 0 && most <= 1) continue;
    const y = Math.max(0, Math.min(1, 0.2126 * r + 0.7152 * g + 0.0722 * b));
    const keep = Math.min(
      1,
      least < 0 ? y / Math.max(1e-9, y - least) : 1,
      most > 1 ? (1 - y) / Math.max(1e-9, most - y) : 1,
    );
    shown[at] = y + keep * (r - y);
    shown[at + 1] = y + keep * (g - y);
    shown[at + 2] = y + keep * (b - y);
  }
  return { width, height, rgb: bytesOfLinear(shown) };
}
