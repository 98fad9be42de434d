import { linearFromLab } from '../colour/spaces.ts';
import { lightAt } from './light.ts';
import type { LightField } from './light.ts';

/**
 * Takes the photo's light out of a flat picture, in place: linear light in the photo's primaries as it came
 * in, as under even, white light out. `rows` maps pixels of the flat picture into the photo.
 */
export type Correction = (
  light: Float32Array,
  width: number,
  height: number,
  rows: readonly number[],
) => void;

/** What white is in this photo. */
export interface White {
  /** Linear light of the white thing in the photo's primaries, divided by the light field there. */
  readonly relative: readonly [number, number, number];
  /** Lightness that the thing has in truth, in CIELAB. */
  readonly lab: { readonly l: number; readonly a: number; readonly b: number };
}

/**
 * White paper by daylight: bright papers hold brighteners, so they are a little blue, not neutral.
 *
 * Source      photographs of known colours on white paper: L 89 to 96, b -2 to -7 (measured); the middle.
 */
export const WHITE_PAPER = { l: 94.3, a: 0.3, b: -3 };

/** Takes the field as it stands over the preview; `perPixel` is preview pixels for each pixel of the photo asked of. */
export function correctionOf(field: LightField, white: White, perPixel: number): Correction {
  const { r, g, b } = linearFromLab(white.lab);
  const target = [r, g, b];
  // The white is scaled to its true colour in the photo's own primaries, near enough to sRGB's for white.
  const gain = target.map((value, k) => value / white.relative[k]!);
  return (light, width, height, [a, b0, c, d, e, f, g0, h, i]) => {
    const gains = new Float32Array(3 * (GRID + 1) * (GRID + 1));
    for (let row = 0; row <= GRID; row++)
      for (let column = 0; column <= GRID; column++) {
        const u = (column * width) / GRID;
        const v = (row * height) / GRID;
        const w = g0! * u + h! * v + i!;
        const x = ((a! * u + b0! * v + c!) / w) * perPixel;
        const y = ((d! * u + e! * v + f!) / w) * perPixel;
        const here = lightAt(field, x, y);
        for (let k = 0; k < 3; k++)
          gains[3 * (row * (GRID + 1) + column) + k] = gain[k]! / here[k]!;
      }
    apply(light, width, height, gains);
  };
}

/** The field is smooth, so its gain is asked for at 9 x 9 places of a sheet and interpolated. */
const GRID = 8;

function apply(light: Float32Array, width: number, height: number, gains: Float32Array): void {
  const line = new Float32Array(3 * (GRID + 1));
  for (let y = 0; y < height; y++) {
    const down = ((y + 0.5) * GRID) / height;
    const row = Math.min(GRID - 1, down | 0);
    for (let k = 0; k < line.length; k++) {
      const upper = gains[row * line.length + k]!;
      line[k] = upper + (down - row) * (gains[(row + 1) * line.length + k]! - upper);
    }
    for (let x = 0; x < width; x++) {
      const across = ((x + 0.5) * GRID) / width;
      const column = Math.min(GRID - 1, across | 0);
      const fx = across - column;
      const at = 3 * (y * width + x);
      const p = 3 * column;
      light[at]! *= line[p]! + fx * (line[p + 3]! - line[p]!);
      light[at + 1]! *= line[p + 1]! + fx * (line[p + 4]! - line[p + 1]!);
      light[at + 2]! *= line[p + 2]! + fx * (line[p + 5]! - line[p + 2]!);
    }
  }
}
