import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { solve } from './surface.ts';

/**
 * How long things on the table are, told from the sheets lying on it, which are all of one size.
 *
 * The squared length of a small vector v at a place p of the photo is v' M(p) v; a camera that looks at a
 * table a little aslant changes M slowly, so that M0 + x M1 + y M2 tells it well. Lengths
 * are in sides of a sheet.
 */
export interface TableMetric {
  readonly of: Float64Array;
  readonly centre: PhotoPoint;
  readonly reach: number;
}

interface Equation {
  readonly terms: readonly number[];
  readonly value: number;
}

/** Null when there are too few sheets (under three) to tell. */
export function tableMetric(quads: readonly Quad<'photo'>[], aspect: number): TableMetric | null {
  if (quads.length < 3) return null;
  const all = quads.flat();
  const centre = {
    x: all.reduce((sum, p) => sum + p.x, 0) / all.length,
    y: all.reduce((sum, p) => sum + p.y, 0) / all.length,
  };
  const reach = Math.max(...all.map((p) => Math.hypot(p.x - centre.x, p.y - centre.y)));
  const frame = { centre, reach };
  const equations = quads.flatMap((quad) => equationsOf(quad, aspect, frame));
  let weights = equations.map(() => 1);
  let of = new Float64Array(9);
  for (let round = 0; round < 8; round++) {
    of = fitted(equations, weights);
    const off = equations.map(({ terms, value }) =>
      Math.abs(terms.reduce((sum, term, k) => sum + term * of[k]!, 0) - value),
    );
    const usual = [...off].sort((p, q) => p - q)[off.length >> 1]!;
    const limit = Math.max(0.004, 2.5 * usual);
    weights = off.map((value) => 1 / (1 + (value / limit) ** 4));
  }
  return { of, ...frame };
}

interface Frame {
  readonly centre: PhotoPoint;
  readonly reach: number;
}

function equationsOf(quad: Quad<'photo'>, aspect: number, frame: Frame): Equation[] {
  const lengths = sideLengths(quad, aspect);
  const sides = [0, 1, 2, 3].map((side) => {
    const [from, to] = [quad[side]!, quad[(side + 1) % 4]!];
    return { terms: termsOf(from, to, frame), value: lengths[side]! ** 2 };
  });
  const diagonal = 1 + aspect ** 2;
  const across = [0, 1].map((k) => ({
    terms: termsOf(quad[k]!, quad[k + 2]!, frame),
    value: diagonal,
  }));
  return [...sides, ...across];
}

/** Sides in units of the shorter one; which way round an oblong sheet lies is told by its looks. */
function sideLengths(quad: Quad<'photo'>, aspect: number): number[] {
  const length = (k: number): number =>
    Math.hypot(quad[(k + 1) % 4]!.x - quad[k]!.x, quad[(k + 1) % 4]!.y - quad[k]!.y);
  const wide = length(0) + length(2) > length(1) + length(3);
  return wide ? [aspect, 1, aspect, 1] : [1, aspect, 1, aspect];
}

function termsOf(from: PhotoPoint, to: PhotoPoint, { centre, reach }: Frame): number[] {
  const vx = (to.x - from.x) / reach;
  const vy = (to.y - from.y) / reach;
  const x = ((from.x + to.x) / 2 - centre.x) / reach;
  const y = ((from.y + to.y) / 2 - centre.y) / reach;
  const square = [vx * vx, 2 * vx * vy, vy * vy];
  return [...square, ...square.map((term) => term * x), ...square.map((term) => term * y)];
}

function fitted(
  equations: readonly Equation[],
  weights: readonly number[],
): Float64Array<ArrayBuffer> {
  const matrix = Array.from({ length: 9 }, () => new Float64Array(10));
  equations.forEach(({ terms, value }, i) => {
    for (let r = 0; r < 9; r++) {
      const row = matrix[r]!;
      for (let c = 0; c < 9; c++) row[c]! += weights[i]! * terms[r]! * terms[c]!;
      row[9]! += weights[i]! * terms[r]! * value;
    }
  });
  // A touch of stiffness keeps the change over the picture at 0 where the sheets cannot tell it.
  const trace = matrix[0]![0]! + matrix[2]![2]!;
  for (let r = 0; r < 9; r++) matrix[r]![r]! += (r < 3 ? 1e-9 : 1e-4) * trace;
  return Float64Array.from(solve(matrix));
}

/** How far the sides of a quad are off a sheet's, each as a part of its length. */
export function offSize(
  { of, centre, reach }: TableMetric,
  quad: Quad<'photo'>,
  aspect: number,
): number[] {
  const lengths = sideLengths(quad, aspect);
  const off = [0, 0, 0, 0];
  for (let side = 0; side < 4; side++) {
    const from = quad[side]!;
    const to = quad[(side + 1) % 4]!;
    const vx = (to.x - from.x) / reach;
    const vy = (to.y - from.y) / reach;
    const x = ((from.x + to.x) / 2 - centre.x) / reach;
    const y = ((from.y + to.y) / 2 - centre.y) / reach;
    const squared =
      vx * vx * (of[0]! + x * of[3]! + y * of[6]!) +
      2 * vx * vy * (of[1]! + x * of[4]! + y * of[7]!) +
      vy * vy * (of[2]! + x * of[5]! + y * of[8]!);
    off[side] = Math.sqrt(Math.max(0, squared)) / lengths[side]! - 1;
  }
  return off;
}
