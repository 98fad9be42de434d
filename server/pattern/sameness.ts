import { MAP_SIDE } from './descriptor.ts';
import { transform } from './fourier.ts';
import { quarterTurned } from './grid.ts';
import type { Grid } from './grid.ts';
import { repeatLikeness } from './repeat-likeness.ts';
import type { PatternTraits } from './traits.ts';

/**
 * How surely two sides show the same pattern, whatever their colours, however the sheets lay.
 *
 * The outline maps are laid over each other in the four quarter turns and every shift; the best
 * agreement counts, less what the maps differ in as a whole: lines one way against lines both ways
 * (stripes fit well on checks of their width), and much outline against little; and less where the
 * repeats of both speak against it (ruled lines fit well on stripes).
 *
 * Takes       the traits of two sides read at the same scale.
 * Gives       1 for the same drawing, about 0 for drawings that share nothing. Symmetric.
 */
export function sameness(a: PatternTraits, b: PatternTraits): number {
  const [one, other] = [readOf(a.descriptor), readOf(b.descriptor)];
  return (
    bestAgreement(one.turns[0]!, other.turns) *
    likeness(one.whole, other.whole) *
    repeatLikeness(a.repeat, b.repeat)
  );
}

/**
 * Sides at least this alike show one pattern.
 *
 * Source      rendered pads, tune seeds 100 to 139, a third of them in bad light: of 160 pairs of one pattern 157 lie from
 *             0.32 up, 2040 pairs of two of one pad below 0.26.
 */
export const SAME_PATTERN = 0.3;

/** What comparing needs of one descriptor, worked out once however often it is compared. */
interface Read {
  /** The transform of the map in each of its quarter turns. */
  readonly turns: readonly Spectrum[];
  readonly whole: Whole;
}

const known = new WeakMap<readonly number[], Read>();

function readOf(descriptor: readonly number[]): Read {
  const before = known.get(descriptor);
  if (before !== undefined) return before;
  let grid: Grid = { side: MAP_SIDE, values: Float64Array.from(descriptor) };
  const whole = wholeOf(grid);
  const turns: Spectrum[] = [];
  for (let quarter = 0; quarter < 4; quarter++) {
    turns.push(spectrumOf(grid));
    grid = quarterTurned(grid);
  }
  const read = { turns, whole };
  known.set(descriptor, read);
  return read;
}

interface Whole {
  /** Mean of the map. */
  readonly outline: number;
  /** 1 when all slopes of the map run along one line, 0 when they run all ways alike. */
  readonly lined: number;
}

function wholeOf({ side, values }: Grid): Whole {
  let [sum, even, slant, all] = [0, 0, 0, 0];
  for (let y = 0; y < side - 1; y++)
    for (let x = 0; x < side - 1; x++) {
      const at = y * side + x;
      const across = values[at + 1]! - values[at]!;
      const down = values[at + side]! - values[at]!;
      sum += values[at]!;
      even += across * across - down * down;
      slant += 2 * across * down;
      all += across * across + down * down;
    }
  return {
    outline: sum / (side - 1) ** 2,
    lined: all === 0 ? 0 : Math.hypot(even, slant) / all,
  };
}

function likeness(a: Whole, b: Whole): number {
  const lined = Math.max(0, 1 - Math.abs(a.lined - b.lined));
  const [less, more] = [Math.min(a.outline, b.outline), Math.max(a.outline, b.outline)];
  return more === 0 ? lined : lined * Math.sqrt(Math.min(1, (SLACK * less) / more));
}

/** One colourway may show this many times the outline of another before it counts against them. */
const SLACK = 1.4;

interface Spectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
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

/**
 * The best agreement over all shifts and turns. The agreement at every shift is the transform of a product;
 * two turns go through one transform, as its real and its imaginary part.
 */
function bestAgreement(a: Spectrum, turns: readonly Spectrum[]): number {
  let best = 0;
  for (let turn = 0; turn < turns.length; turn += 2) {
    const [b, c] = [turns[turn]!, turns[turn + 1]!];
    const re = new Float64Array(a.re.length);
    const im = new Float64Array(a.re.length);
    for (let i = 0; i < re.length; i++) {
      const [ar, ai] = [a.re[i]!, a.im[i]!];
      const [br, bi] = [b.re[i]!, b.im[i]!];
      const [cr, ci] = [c.re[i]!, c.im[i]!];
      re[i] = ar * br + ai * bi - (ar * ci - ai * cr);
      im[i] = ar * bi - ai * br + (ar * cr + ai * ci);
    }
    transform(re, im, MAP_SIDE, true);
    for (let i = 0; i < re.length; i++) best = Math.max(best, re[i]!, im[i]!);
  }
  return best;
}
