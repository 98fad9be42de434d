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
  const row = 3 * width;
  const slope = new Float32Array(width * height);
  for (let y = 1; y < height - 1; y++)
    for (let x = 1; x < width - 1; x++) {
      const at = 3 * (y * width + x);
      slope[y * width + x] = Math.sqrt(
        steepness(lab, at, row) + steepness(lab, at + 1, row) + steepness(lab, at + 2, row),
      );
    }
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

/** The squared slope of one channel, from differences over two pixels, smoothed along the edge. */
function steepness(lab: Float32Array, at: number, row: number): number {
  const nw = lab[at - row - 3]!;
  const n = lab[at - row]!;
  const ne = lab[at - row + 3]!;
  const w = lab[at - 3]!;
  const e = lab[at + 3]!;
  const sw = lab[at + row - 3]!;
  const s = lab[at + row]!;
  const se = lab[at + row + 3]!;
  const across = ne + 2 * e + se - nw - 2 * w - sw;
  const down = sw + 2 * s + se - nw - 2 * n - ne;
  return (across * across + down * down) / 64;
}

function percentiles(values: Float32Array, parts: readonly number[]): number[] {
  const every = Math.max(1, Math.floor(values.length / 8000));
  const sample = new Float32Array(Math.ceil(values.length / every));
  for (let index = 0; index < sample.length; index++) sample[index] = values[index * every]!;
  sample.sort();
  return parts.map((part) => sample[Math.floor(part * (sample.length - 1))] ?? 0);
}
