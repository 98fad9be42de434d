import type { LightSurface } from './light-surface.ts';
import { median, solve } from './surface.ts';

/** No surface is taken as steadier than paper is, as a logarithm of light. */
const QUIETEST = 0.008;

/** The covariance of the residuals; at first, when all is open, from their medians alone. */
export function covarianceOf(
  { count, weights }: LightSurface,
  residuals: Float64Array,
  rough: boolean,
): Float64Array {
  const cover = new Float64Array(9);
  if (rough) {
    for (let k = 0; k < 3; k++) {
      const sizes = Array.from({ length: count }, (_, i) => Math.abs(residuals[3 * i + k]!));
      cover[4 * k] = (1.4826 * median(sizes)) ** 2;
    }
  } else {
    let all = 1e-12;
    for (let i = 0; i < count; i++) {
      const w = weights[i]!;
      all += w;
      for (let p = 0; p < 3; p++)
        for (let q = 0; q < 3; q++)
          cover[3 * p + q]! += w * residuals[3 * i + p]! * residuals[3 * i + q]!;
    }
    // The biweight takes the tails off, so what is left is a little narrow.
    for (let m = 0; m < 9; m++) cover[m]! /= all;
  }
  for (let k = 0; k < 3; k++) cover[4 * k]! += QUIETEST ** 2;
  return cover;
}

export function inverse(m: Float64Array): Float64Array {
  const columns = [0, 1, 2].map((c) =>
    solve(
      [0, 1, 2].map((r) =>
        Float64Array.of(m[3 * r]!, m[3 * r + 1]!, m[3 * r + 2]!, r === c ? 1 : 0),
      ),
    ),
  );
  return Float64Array.from({ length: 9 }, (_, i) => columns[i % 3]![Math.floor(i / 3)]!);
}

export function form(precision: Float64Array, values: Float64Array, at: number): number {
  let sum = 0;
  for (let p = 0; p < 3; p++)
    for (let q = 0; q < 3; q++) sum += precision[3 * p + q]! * values[at + p]! * values[at + q]!;
  return sum;
}

/**
 * The part of the points that vary by themselves: along a row each is tied to those that follow it by how well
 * their residuals agree, and down the columns it will be the same.
 */
export function ownPart(
  { count, steps, near, weights, precision }: LightSurface,
  residuals: Float64Array,
): number {
  const dark = new Float64Array(count);
  let alone = 1e-12;
  for (let i = 0; i < count; i++) {
    for (let m = 0; m < 9; m++) dark[i]! += precision[m]! * residuals[3 * i + (m % 3)]!;
    dark[i]! *= Math.sqrt(weights[i]!);
    alone += dark[i]! * dark[i]!;
  }
  alone /= count;
  let tied = 0;
  for (let lag = 1; lag <= FURTHEST; lag++) {
    let [together, pairs] = [0, 0];
    for (let i = 0; i + lag < count; i++) {
      if (steps[i + lag - 1]! > near) i += lag;
      else if (steps[i]! <= near) {
        together += dark[i]! * dark[i + lag]!;
        pairs++;
      }
    }
    const r = pairs === 0 ? 0 : together / pairs / alone;
    if (r < 0.05) break;
    tied += r;
  }
  return 1 / (1 + 2 * tied) ** 2;
}

/** Points beyond which neighbours are not asked. */
const FURTHEST = 12;
