import type { LabImage } from '../colour/lab.ts';
import { rankInPlace } from './surface.ts';

/**
 * The noise of a flat picture, as the standard error of one pixel in CIELAB units (all three axes).
 *
 * Second differences of neighbours cancel any slope; their quieter half tells the noise, the louder
 * half the print.
 *
 * Source      Immerkaer (1996), Fast noise variance estimation, doi:10.1006/cviu.1996.0060, with a
 *             quantile instead of the mean because prints are full of edges.
 */
export function noiseOf({ width, height, lab }: LabImage): number {
  const step = Math.max(1, Math.round(Math.sqrt((width * height) / LOOKED_AT)));
  const differences = new Float32Array(Math.ceil(width / step) * Math.ceil(height / step));
  let squares = 0;
  for (let axis = 0; axis < 3; axis++) {
    let count = 0;
    for (let y = 1; y < height - 1; y += step)
      for (let x = 1; x < width - 1; x += step) {
        const at = 3 * (y * width + x) + axis;
        differences[count++] = Math.abs(lab[at - 3]! - 2 * lab[at]! + lab[at + 3]!);
      }
    const quartile = count === 0 ? 0 : rankInPlace(differences.subarray(0, count), count >> 2);
    // The quartile of |N(0, 1)| is 0.3186; a second difference has six times the variance of a pixel.
    const sigma = quartile / 0.3186 / Math.sqrt(6);
    squares += sigma * sigma;
  }
  return Math.max(0.1, Math.sqrt(squares));
}

/** About so many pixels, evenly strewn, tell the quartile to 2 %. */
const LOOKED_AT = 8000;
