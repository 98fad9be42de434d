import type { LabImage } from '../colour/lab.ts';

/** The outlines of a print: how strong each pixel's edge is. */
export interface Outlines {
  readonly width: number;
  readonly height: number;
  /** In [0, 1], whatever the colours on either side: 1 where shapes plainly meet. */
  readonly strength: Float32Array;
}

/**
 * Finds the outlines of the printed shapes, as strong in a quiet colourway as in a loud one.
 *
 * The edge of a pixel (Sobel's differences in l, a, b together) is measured against the stronger edges
 * of the same picture, so colours and light drop out; what noise alone would give counts as nothing.
 *
 * Takes       a flat picture.
 */
export function outlinesOf({ width, height, lab }: LabImage): Outlines {
  const slope = new Float32Array(width * height);
  for (let channel = 0; channel < 3; channel++) addSteepness(lab, channel, width, height, slope);
  for (let at = 0; at < slope.length; at++) slope[at] = Math.sqrt(slope[at]! / 64);
  const [quiet, strong] = percentiles(slope, [0.25, 0.98]);
  const level = Math.max(
    FAINTEST,
    PART_OF_STRONG * strong!,
    Math.min(MOST_OF_STRONG * strong!, TIMES_QUIET * quiet!),
  );
  const half = level ** 4;
  const strength = new Float32Array(slope.length);
  for (let at = 0; at < slope.length; at++) {
    const square = slope[at]! * slope[at]!;
    strength[at] = (square * square) / (square * square + half);
  }
  return { width, height, strength };
}

/** An edge counts half when it has this part of the slope of the picture's strong edges ... */
const PART_OF_STRONG = 0.12;
/** ... or, in a noisy picture, this many times the slope of its quiet parts, up to this part of the strong. */
const TIMES_QUIET = 3;
const MOST_OF_STRONG = 0.3;
/** An edge counts half at this slope at least, in CIELAB units a pixel. */
const FAINTEST = 1;

/**
 * Adds to each pixel inside the rim the squared slope of one channel, times 64, from differences over two pixels,
 * smoothed along the edge. Three columns of three pixels are held at a time: what they add up to, and lower less upper.
 */
function addSteepness(
  lab: Float32Array,
  channel: number,
  width: number,
  height: number,
  slope: Float32Array,
): void {
  const row = 3 * width;
  for (let y = 1; y < height - 1; y++) {
    let at = y * row + channel;
    let sumWest = lab[at - row]! + 2 * lab[at]! + lab[at + row]!;
    let stepWest = lab[at + row]! - lab[at - row]!;
    at += 3;
    let sumHere = lab[at - row]! + 2 * lab[at]! + lab[at + row]!;
    let stepHere = lab[at + row]! - lab[at - row]!;
    at += 3;
    for (let pixel = y * width + 1, end = (y + 1) * width - 1; pixel < end; pixel++, at += 3) {
      const upper = lab[at - row]!;
      const lower = lab[at + row]!;
      const sumEast = upper + 2 * lab[at]! + lower;
      const stepEast = lower - upper;
      const across = sumEast - sumWest;
      const down = stepWest + 2 * stepHere + stepEast;
      slope[pixel]! += across * across + down * down;
      sumWest = sumHere;
      sumHere = sumEast;
      stepWest = stepHere;
      stepHere = stepEast;
    }
  }
}

function percentiles(values: Float32Array, parts: readonly number[]): number[] {
  const every = Math.max(1, Math.floor(values.length / 8000));
  const sample = new Float32Array(Math.ceil(values.length / every));
  for (let index = 0; index < sample.length; index++) sample[index] = values[index * every]!;
  sample.sort();
  return parts.map((part) => sample[Math.floor(part * (sample.length - 1))] ?? 0);
}
