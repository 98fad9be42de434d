import { MAP_SIDE } from './descriptor.ts';
import { transform } from './fourier.ts';
import { quarterTurned } from './grid.ts';
import type { Grid } from './grid.ts';
import type { PatternTraits } from './traits.ts';

/**
 * How surely two sides show the same pattern, whatever their colours, however the sheets lay.
 *
 * The outline maps are laid over each other in the four quarter turns and every shift; the best
 * agreement counts.
 *
 * Takes       the traits of two sides read at the same scale.
 * Gives       1 for the same drawing, about 0 for drawings that share nothing. Symmetric.
 */
export function sameness(a: PatternTraits, b: PatternTraits): number {
  const one = spectrumOf(gridOf(a.descriptor));
  let best = 0;
  let grid = gridOf(b.descriptor);
  for (let quarter = 0; quarter < 4; quarter++) {
    best = Math.max(best, bestAgreement(one, spectrumOf(grid)));
    grid = quarterTurned(grid);
  }
  return best;
}

/** Sides at least this alike show one pattern. */
export const SAME_PATTERN = 0.66;

interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

function gridOf(descriptor: readonly number[]): Grid {
  return { side: MAP_SIDE, values: Float64Array.from(descriptor) };
}

/** The transform of the map, its mean taken away and its length made 1. */
function spectrumOf({ side, values }: Grid): Spectrum {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const re = values.map((value) => value - mean);
  const length = Math.sqrt(re.reduce((sum, value) => sum + value * value, 0));
  if (length > 0) for (let i = 0; i < re.length; i++) re[i]! /= length;
  const im = new Float64Array(re.length);
  transform(re, im, side);
  return { re, im };
}

function bestAgreement(a: Spectrum, b: Spectrum): number {
  const re = new Float64Array(a.re.length);
  const im = new Float64Array(a.re.length);
  for (let i = 0; i < re.length; i++) {
    re[i] = a.re[i]! * b.re[i]! + a.im[i]! * b.im[i]!;
    im[i] = a.re[i]! * b.im[i]! - a.im[i]! * b.re[i]!;
  }
  transform(re, im, MAP_SIDE, true);
  return re.reduce((best, value) => Math.max(best, value), 0);
}
