import { cluster } from './cluster.ts';
import { difference } from './difference.ts';
import type { Histogram } from './histogram.ts';
import type { Lab } from './lab.ts';
import type { Labels } from './label-pixels.ts';
import type { PaletteColour } from './palette.ts';
import { startsOf } from './starts.ts';

/**
 * The one or two colours of a tonal side, or null when the side is printed in flat colours.
 *
 * Flat printing leaves nearly all its pixels within the noise of a few centres; a tone that runs fills
 * the colours in between.
 *
 * Takes       the histogram of the flat pixels, its centres, and the noise of one pixel (CIELAB units).
 */
export function tonalColours(
  histogram: Histogram,
  centres: readonly Lab[],
  noise: number,
  seed: number,
): Lab[] | null {
  if (nearCentres(histogram, centres, REACH + 3 * noise) >= FLAT_PRINT) return null;
  const [p, q] = cluster(histogram, startsOf(histogram, 2, seed), seed).centres;
  if (q !== undefined && hueApart(p!, q)) return [p!, q];
  return [...cluster(histogram, startsOf(histogram, 1, seed), seed).centres];
}

/** Grain of plain printed paper, in CIELAB units. */
const REACH = 3;
const FLAT_PRINT = 0.7;

function nearCentres(
  { size, lab, weight }: Histogram,
  centres: readonly Lab[],
  reach: number,
): number {
  let near = 0;
  let total = 0;
  for (let box = 0; box < size; box++) {
    total += weight[box]!;
    const close = centres.some(
      ({ l, a, b }) =>
        Math.hypot(lab[3 * box]! - l, lab[3 * box + 1]! - a, lab[3 * box + 2]! - b) < reach,
    );
    if (close) near += weight[box]!;
  }
  return near / total;
}

/** Two colours of one hue are one tone that runs; told apart by hue they are two. */
function hueApart(p: Lab, q: Lab): boolean {
  const level = (p.l + q.l) / 2;
  return difference({ ...p, l: level }, { ...q, l: level }) > 8;
}

/** How far the tone of one colour runs: its 5th and 95th percentile in lightness, each with its mean hue. */
export function toneRange(
  lab: Float32Array,
  { of }: Labels,
  label: number,
): NonNullable<PaletteColour['range']> {
  const count = new Float64Array(101);
  const a = new Float64Array(101);
  const b = new Float64Array(101);
  let total = 0;
  for (let pixel = 0; pixel < of.length; pixel++) {
    if (of[pixel] !== label) continue;
    const step = Math.min(100, Math.max(0, Math.round(lab[3 * pixel]!)));
    count[step]! += 1;
    a[step]! += lab[3 * pixel + 1]!;
    b[step]! += lab[3 * pixel + 2]!;
    total++;
  }
  const at = (part: number): Lab => {
    let passed = 0;
    let step = 0;
    for (; step < 100; step++) {
      passed += count[step]!;
      if (passed >= part * total) break;
    }
    const here = Math.max(1, count[step]!);
    return { l: step, a: a[step]! / here, b: b[step]! / here };
  };
  return { darkest: at(0.05), lightest: at(0.95) };
}
