import type { WeighedColours } from './histogram.ts';

/**
 * Draws colours at even steps of weight, so that each share of the area is kept.
 *
 * Takes       weighed colours and how many to draw.
 * Gives       that many colours (one more or less), all of weight 1.
 */
export function sampleOf({ size, lab, weight }: WeighedColours, wanted: number): WeighedColours {
  let total = 0;
  for (let box = 0; box < size; box++) total += weight[box]!;
  const stride = total / wanted;
  const drawn: number[] = [];
  let passed = 0;
  let next = stride / 2;
  for (let box = 0; box < size; box++) {
    passed += weight[box]!;
    for (; next < passed; next += stride)
      drawn.push(lab[3 * box]!, lab[3 * box + 1]!, lab[3 * box + 2]!);
  }
  const count = drawn.length / 3;
  return { size: count, lab: Float64Array.from(drawn), weight: new Float64Array(count).fill(1) };
}
