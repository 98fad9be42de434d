import { kmeans } from 'ml-kmeans';
import type { WeighedColours } from './histogram.ts';
import type { Lab } from './lab.ts';
import { refine } from './refine.ts';
import type { Refined } from './refine.ts';
import { sampleOf } from './sample.ts';

/**
 * k-means from given starting centres: ml-kmeans on a small sample that is faithful to the areas, then
 * a refinement over the histogram of all pixels. Doubled centres come out as one.
 *
 * Takes       the histogram, starting centres, and the seed that ml-kmeans is always given.
 * Gives       at most as many centres as were given, without empty ones.
 */
export function cluster(histogram: WeighedColours, starts: readonly Lab[], seed: number): Refined {
  const sample = sampleOf(histogram, SAMPLE);
  const rows = Array.from({ length: sample.size }, (_, i) => [
    ...sample.lab.subarray(3 * i, 3 * i + 3),
  ]);
  const begun = distinct(starts).slice(0, rows.length);
  const { centroids } = kmeans(rows, begun.length, {
    initialization: begun.map(({ l, a, b }) => [l, a, b]),
    maxIterations: ROUNDS,
    tolerance: 1e-3,
    seed,
  });
  const moved = distinct(centroids.map(([l, a, b]) => ({ l: l!, a: a!, b: b! })));
  return withoutEmpty(refine(histogram, moved));
}

const SAMPLE = 400;
const ROUNDS = 12;

/** ml-kmeans doubles a centre without a word when points are equal. */
function distinct(centres: readonly Lab[]): Lab[] {
  return centres.filter(
    (centre, index) =>
      !centres
        .slice(0, index)
        .some((other) => other.l === centre.l && other.a === centre.a && other.b === centre.b),
  );
}

function withoutEmpty({ centres, weights, error }: Refined): Refined {
  return {
    centres: centres.filter((_, c) => weights[c]! > 0),
    weights: weights.filter((weight) => weight > 0),
    error,
  };
}
