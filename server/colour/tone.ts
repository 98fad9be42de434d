import { cluster } from './cluster.ts';
import { difference } from './difference.ts';
import type { Histogram } from './histogram.ts';
import type { Lab } from './lab.ts';
import type { Labels } from './label-pixels.ts';
import type { PaletteColour } from './palette.ts';

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
  const one = cluster(histogram, [centres[0]!], seed);
  const axis = furthestApart(histogram, one.centres[0]!);
  const two = cluster(histogram, axis, seed);
  const [p, q] = [two.centres[0]!, two.centres[1]];
  return q !== undefined && hueApart(p, q) ? [p, q] : [...one.centres];
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

/** The weighted means of the two halves on either side of the mean, parted along the longest axis. */
function furthestApart({ size, lab, weight }: Histogram, middle: Lab): [Lab, Lab] {
  let [dl, da, db] = [1, 0.3, 0.3];
  for (let round = 0; round < 8; round++) {
    let [sl, sa, sb] = [0, 0, 0];
    for (let box = 0; box < size; box++) {
      const [l, a, b] = [
        lab[3 * box]! - middle.l,
        lab[3 * box + 1]! - middle.a,
        lab[3 * box + 2]! - middle.b,
      ];
      const along = weight[box]! * (l * dl + a * da + b * db);
      sl += along * l;
      sa += along * a;
      sb += along * b;
    }
    const length = Math.hypot(sl, sa, sb);
    if (length === 0) break;
    [dl, da, db] = [sl / length, sa / length, sb / length];
  }
  const half = (sign: number): Lab => ({
    l: middle.l + sign * 8 * dl,
    a: middle.a + sign * 8 * da,
    b: middle.b + sign * 8 * db,
  });
  return [half(1), half(-1)];
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
