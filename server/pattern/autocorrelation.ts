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
 * only, so that the sheet's edges do not matter.
 *
 * Takes       grids of the same side (a power of two).
 * Gives       likeness in about [-1, 1]; a picture without any contrast is unlike itself everywhere.
 * Source      N. Wiener and A. Khinchin's theorem, as in any text of signal processing.
 */
export function autocorrelation(maps: readonly Grid[]): Autocorrelation {
  const { side } = maps[0]!;
  const wide = 2 * side;
  const power = new Float64Array(wide * wide);
  for (const { values } of maps) {
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const re = new Float64Array(wide * wide);
    const im = new Float64Array(wide * wide);
    for (let y = 0; y < side; y++)
      for (let x = 0; x < side; x++) re[y * wide + x] = values[y * side + x]! - mean;
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

/** Variance below which a picture counts as plain, in squared CIELAB units. */
const FAINT = 0.02;
