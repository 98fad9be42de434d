import type { WeighedColours } from './histogram.ts';
import type { Lab } from './lab.ts';

export interface Refined {
  readonly centres: readonly Lab[];
  /** Pixels nearest to each centre. */
  readonly weights: readonly number[];
  /** Mean squared distance of a pixel from its centre: the quantisation error. */
  readonly error: number;
}

/**
 * Moves k-means centres over all colours until they rest: Lloyd's two steps with weights.
 *
 * Takes       the weighed colours and the starting centres (one or more).
 * Gives       as many centres; one that loses all its pixels stays where it was, with weight 0.
 * Source      S. P. Lloyd (1982), IEEE Trans. Inf. Theory 28(2), 129-137, doi:10.1109/TIT.1982.1056489.
 */
export function refine(colours: WeighedColours, starts: readonly Lab[], rounds = 60): Refined {
  const k = starts.length;
  const centre = Float64Array.from(starts.flatMap(({ l, a, b }) => [l, a, b]));
  const sums = new Float64Array(4 * k);
  let error = Infinity;
  for (let round = 0; round < rounds; round++) {
    const before = error;
    error = assign(colours, centre, sums);
    if (before - error <= RESTED * error) break;
    for (let c = 0; c < k; c++) {
      const weight = sums[4 * c + 3]!;
      if (weight === 0) continue;
      for (let axis = 0; axis < 3; axis++) centre[3 * c + axis] = sums[4 * c + axis]! / weight;
    }
  }
  return {
    centres: starts.map((_, c) => ({
      l: centre[3 * c]!,
      a: centre[3 * c + 1]!,
      b: centre[3 * c + 2]!,
    })),
    weights: starts.map((_, c) => sums[4 * c + 3]!),
    error,
  };
}

/** Centres rest when a round lowers the error by less than this part of it. */
const RESTED = 1e-5;

function assign(
  { size, lab, weight }: WeighedColours,
  centre: Float64Array,
  sums: Float64Array,
): number {
  sums.fill(0);
  let total = 0;
  let error = 0;
  for (let box = 0; box < size; box++) {
    const l = lab[3 * box]!;
    const a = lab[3 * box + 1]!;
    const b = lab[3 * box + 2]!;
    let best = 0;
    let least = Infinity;
    for (let c = 0, p = 0; p < centre.length; c++, p += 3) {
      const dl = l - centre[p]!;
      const da = a - centre[p + 1]!;
      const db = b - centre[p + 2]!;
      const apart = dl * dl + da * da + db * db;
      if (apart < least) {
        least = apart;
        best = c;
      }
    }
    const w = weight[box]!;
    sums[4 * best]! += w * l;
    sums[4 * best + 1]! += w * a;
    sums[4 * best + 2]! += w * b;
    sums[4 * best + 3]! += w;
    total += w;
    error += w * least;
  }
  return total === 0 ? 0 : error / total;
}
