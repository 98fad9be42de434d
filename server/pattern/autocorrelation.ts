import { transform } from './fourier.ts';
import type { Grid } from './grid.ts';

/** How alike a picture and its shifted self are, for every shift. */
export interface Autocorrelation {
  /** Shifts run from -reach to reach fields in x and y. */
  readonly reach: number;
  /** Likeness at a shift: 1 for no shift, about 0 where nothing agrees. */
  at(dx: number, dy: number): number;
}

/**
 * The autocorrelation of several maps of one picture together, each shift weighed by its own overlap
 * only, so that the sheet's edges do not matter. Two maps go through one transform, as real and imaginary part:
 * what they have in common then falls into the imaginary part of the result, which is not read.
 *
 * Takes       grids of the same side (a power of two).
 * Gives       likeness in about [-1, 1]; a picture without any contrast is unlike itself everywhere.
 * Source      N. Wiener and A. Khinchin's theorem, as in any text of signal processing.
 */
export function autocorrelation(maps: readonly Grid[]): Autocorrelation {
  const { side } = maps[0]!;
  const wide = 2 * side;
  const power = new Float64Array(wide * wide);
  for (let first = 0; first < maps.length; first += 2) {
    const re = padded(maps[first]!, wide);
    const second = maps[first + 1];
    const im = second === undefined ? new Float64Array(wide * wide) : padded(second, wide);
    transform(re, im, wide);
    for (let i = 0; i < power.length; i++) power[i]! += re[i]! ** 2 + im[i]! ** 2;
  }
  const nothing = new Float64Array(wide * wide);
  transform(power, nothing, wide, true);
  const self = power[0]! / (side * side);
  return {
    reach: side - 1,
    at(dx, dy) {
      const overlap = (side - Math.abs(dx)) * (side - Math.abs(dy));
      const sum = power[((dy + wide) % wide) * wide + ((dx + wide) % wide)]!;
      return self > FAINT ? sum / overlap / self : 0;
    },
  };
}

/** The map without its mean, in the corner of a field of zeros. */
function padded({ side, values }: Grid, wide: number): Float64Array {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const out = new Float64Array(wide * wide);
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) out[y * wide + x] = values[y * side + x]! - mean;
  return out;
}

/** Variance below which a picture counts as plain, in squared CIELAB units. */
const FAINT = 0.02;
