import type { LabImage } from '../colour/lab.ts';

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
  let squares = 0;
  for (let axis = 0; axis < 3; axis++) {
    const differences: number[] = [];
    for (let y = 1; y < height - 1; y += 3)
      for (let x = 1; x < width - 1; x += 3) {
        const at = 3 * (y * width + x) + axis;
        differences.push(Math.abs(lab[at - 3]! - 2 * lab[at]! + lab[at + 3]!));
      }
    const sorted = Float32Array.from(differences).sort();
    // The quartile of |N(0, 1)| is 0.3186; a second difference has six times the variance of a pixel.
    const sigma = (sorted[sorted.length >> 2] ?? 0) / 0.3186 / Math.sqrt(6);
    squares += sigma * sigma;
  }
  return Math.max(0.1, Math.sqrt(squares));
}
