import type { WeighedColours } from './histogram.ts';
import type { Lab } from './lab.ts';
import { refine } from './refine.ts';
import { sampleOf } from './sample.ts';

/**
 * Good starting centres for k-means when only their number is known: several draws, each far from the
 * ones before it, moved a few rounds over a sample; the draw with the least error is kept.
 *
 * Takes       the histogram, the number of centres (1 or more) and a seed.
 * Gives       at most as many centres as there are colours in the sample.
 * Source      D. Arthur, S. Vassilvitskii (2007), k-means++: the advantages of careful seeding, SODA '07,
 *             1027-1035: each next centre is drawn by its squared distance from those chosen.
 */
export function startsOf(histogram: WeighedColours, k: number, seed: number): readonly Lab[] {
  const chance = chanceOf(seed);
  const thinned = sampleOf(histogram, THINNED);
  let best = refine(thinned, draw(thinned, k, chance), ROUNDS);
  for (let next = 1; next < DRAWS; next++) {
    const other = refine(thinned, draw(thinned, k, chance), ROUNDS);
    if (other.error < best.error) best = other;
  }
  return best.centres;
}

/** A random start ends 18 % above the best in the middle of many; one of eight is near it. */
const DRAWS = 8;
const ROUNDS = 6;
/** Colours on which the draws are tried. */
const THINNED = 1000;

function draw({ size, lab, weight }: WeighedColours, k: number, chance: () => number): Lab[] {
  const centres: Lab[] = [];
  const reach = Float64Array.from(weight);
  const apart = new Float64Array(size).fill(Infinity);
  for (let c = 0; c < Math.min(k, size); c++) {
    const box = picked(reach, chance());
    const [l, a, b] = [lab[3 * box]!, lab[3 * box + 1]!, lab[3 * box + 2]!];
    centres.push({ l, a, b });
    for (let i = 0; i < size; i++) {
      const squared =
        (lab[3 * i]! - l) ** 2 + (lab[3 * i + 1]! - a) ** 2 + (lab[3 * i + 2]! - b) ** 2;
      if (squared < apart[i]!) apart[i] = squared;
      reach[i] = weight[i]! * apart[i]!;
    }
  }
  return centres;
}

/** The box in which a part of the running sum falls. */
function picked(weights: Float64Array, part: number): number {
  let total = 0;
  for (const weight of weights) total += weight;
  let left = part * total;
  for (let i = 0; i < weights.length; i++) {
    left -= weights[i]!;
    if (left < 0) return i;
  }
  return weights.length - 1;
}

/** Numbers in [0, 1), the same for the same seed (mulberry32, a generator in the public domain). */
function chanceOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
