import { covarianceOf, form, inverse, ownPart } from './light-grain.ts';
import { median } from './surface.ts';

/** A place on some surface that has one colour all over: what differs over it is light. */
export interface SurfacePoint {
  /** Place in [-1, 1]. */
  readonly x: number;
  readonly y: number;
  /** Logarithm of linear light, channel by channel. */
  readonly log: readonly [number, number, number];
}

/** Coefficients of the shape of light: x, y, xx, xy, yy. */
export const SHAPE = 5;
/** The shape of green, then what red and blue differ from it. */
export const UNKNOWNS = 3 * SHAPE;
/**
 * How far, in standard deviations of its three channels together, a point may stray and still count. Tukey's 4.685 is
 * for one channel; three stray further by chance. A judgement.
 */
const BIWEIGHT = 6.2;

/** One surface with what is known of its points so far. */
export interface LightSurface {
  readonly count: number;
  /** Terms of the shape, five a point, and the logarithms, three a point. */
  readonly terms: Float64Array;
  readonly logs: Float64Array;
  /** How far it is from each point to the next, and up to where that is the next one in its row. */
  readonly steps: readonly number[];
  readonly near: number;
  readonly weights: Float64Array;
  /** The means of terms and logarithms by weight. */
  readonly middle: Float64Array;
  /** Inverse covariance of the residuals of a point, and the part of the points that varies by itself. */
  precision: Float64Array;
  counts: number;
  /** How many times more of a shape of its own it is allowed, as a variance. */
  slack: number;
}

export function prepared(points: readonly SurfacePoint[]): LightSurface {
  const terms = new Float64Array(SHAPE * points.length);
  const logs = new Float64Array(3 * points.length);
  points.forEach(({ x, y, log }, i) => {
    terms.set([x, y, x * x, x * y, y * y], SHAPE * i);
    logs.set(log, 3 * i);
  });
  const steps = points.slice(1).map((p, i) => Math.hypot(p.x - points[i]!.x, p.y - points[i]!.y));
  return {
    count: points.length,
    terms,
    logs,
    steps,
    near: 1.5 * median(steps),
    weights: new Float64Array(points.length).fill(1),
    middle: new Float64Array(SHAPE + 3),
    precision: new Float64Array(9),
    counts: 1,
    slack: 1,
  };
}

/** What red, green and blue are made of: the shape of green and, for red and blue, their own. */
export function courseOf(shape: Float64Array, channel: number): Float64Array {
  const course = shape.slice(0, SHAPE);
  if (channel === 1) return course;
  const own = channel === 0 ? SHAPE : 2 * SHAPE;
  for (let t = 0; t < SHAPE; t++) course[t]! += shape[own + t]!;
  return course;
}

function residualsOf(
  { count, terms, logs, middle }: LightSurface,
  shape: Float64Array,
): Float64Array {
  const out = new Float64Array(3 * count);
  for (let k = 0; k < 3; k++) {
    const course = courseOf(shape, k);
    let level = middle[SHAPE + k]!;
    for (let t = 0; t < SHAPE; t++) level -= course[t]! * middle[t]!;
    for (let i = 0; i < count; i++) {
      let told = level;
      for (let t = 0; t < SHAPE; t++) told += course[t]! * terms[SHAPE * i + t]!;
      out[3 * i + k] = logs[3 * i + k]! - told;
    }
  }
  return out;
}

/** Sets the weights of a surface's points, its middle, its grain and what its points count for. */
export function weigh(seen: LightSurface, shape: Float64Array, round: number): void {
  center(seen);
  const residuals = residualsOf(seen, shape);
  const cover = covarianceOf(seen, residuals, round === 0);
  seen.precision = inverse(cover);
  const reach = BIWEIGHT * (round < 3 ? 2 : 1);
  for (let i = 0; i < seen.count; i++) {
    const t = Math.sqrt(form(seen.precision, residuals, 3 * i)) / reach;
    seen.weights[i] = t >= 1 ? 0 : (1 - t * t) ** 2;
  }
  seen.counts = ownPart(seen, residuals);
  center(seen);
}

function center({ count, terms, logs, weights, middle }: LightSurface): void {
  middle.fill(0);
  let all = 1e-12;
  for (let i = 0; i < count; i++) {
    const w = weights[i]!;
    all += w;
    for (let t = 0; t < SHAPE; t++) middle[t]! += w * terms[SHAPE * i + t]!;
    for (let k = 0; k < 3; k++) middle[SHAPE + k]! += w * logs[3 * i + k]!;
  }
  for (let m = 0; m < middle.length; m++) middle[m]! /= all;
}
