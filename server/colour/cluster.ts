import { kmeans } from 'ml-kmeans';
import type { Histogram } from './histogram.ts';
import type { Lab } from './lab.ts';
import { refine } from './refine.ts';
import type { Refined } from './refine.ts';

/**
 * k-means from given starting centres: ml-kmeans on a small sample that is faithful to the areas, then
 * a refinement over the histogram of all pixels. Doubled centres come out as one.
 *
 * Takes       the histogram, starting centres, and the seed that ml-kmeans is always given.
 * Gives       at most as many centres as were given, without empty ones.
 */
export function cluster(histogram: Histogram, starts: readonly Lab[], seed: number): Refined {
  const sample = sampleOf(histogram, SAMPLE);
  const begun = distinct(starts).slice(0, sample.length);
  const { centroids } = kmeans(sample, begun.length, {
    initialization: begun.map(({ l, a, b }) => [l, a, b]),
    maxIterations: ROUNDS,
    tolerance: 1e-3,
    seed,
  });
  const moved = distinct(centroids.map(([l, a, b]) => ({ l: l!, a: a!, b: b! })));
  return withoutEmpty(refine(histogram, moved));
}

const SAMPLE = 600;
const ROUNDS = 12;

/** Colours drawn from the boxes at even steps of weight, so that each share of the area is kept. */
function sampleOf({ size, lab, weight }: Histogram, wanted: number): number[][] {
  let total = 0;
  for (let box = 0; box < size; box++) total += weight[box]!;
  const stride = total / wanted;
  const sample: number[][] = [];
  let passed = 0;
  let next = stride / 2;
  for (let box = 0; box < size; box++) {
    passed += weight[box]!;
    for (; next < passed; next += stride)
      sample.push([lab[3 * box]!, lab[3 * box + 1]!, lab[3 * box + 2]!]);
  }
  return sample;
}

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
