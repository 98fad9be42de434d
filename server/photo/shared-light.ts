import { median, solve } from './surface.ts';

/** A place on some surface that has one colour all over: what differs over it is light. */
export interface SurfacePoint {
  /** Place in [-1, 1]. */
  readonly x: number;
  readonly y: number;
  readonly value: number;
  /** Which of the surfaces, from 0. */
  readonly on: number;
}

export interface SharedLight {
  /** Coefficients of 1, x, y, xx, xy, yy; the first is the height over the first surface. */
  readonly of: Float64Array;
  /** Typical distance of the steadiest surface's points from it. */
  readonly spread: number;
}

/**
 * One light over several surfaces: they share its shape, and each has a height of its own (its colour).
 *
 * Takes       points, those of surface 0 among them, and how strongly the shape is held flat.
 * Source      Tukey's biweight, reweighted least squares: Holland, Welsch (1977),
 *             doi:10.1080/03610927708827533, table 1; each surface weighed by its own spread.
 */
export function shareLight(points: readonly SurfacePoint[], stiffness: number): SharedLight {
  const surfaces = 1 + points.reduce((most, { on }) => Math.max(most, on), 0);
  let shape: Float64Array = new Float64Array(SHAPE);
  let heights = heightsOf(points, surfaces, shape);
  let spreads: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const residuals = points.map((p) => p.value - heights[p.on]! - shapeAt(shape, p));
    spreads = heights.map((_, on) =>
      Math.max(
        QUIETEST,
        1.4826 * median(residuals.filter((_r, i) => points[i]!.on === on).map(Math.abs)),
      ),
    );
    const solved = leastSquares(points, residuals, spreads, stiffness, round < 3 ? 2 : 1);
    shape = solved.subarray(0, SHAPE);
    heights = [...solved.subarray(SHAPE)];
  }
  return { of: Float64Array.of(heights[0]!, ...shape), spread: Math.min(...spreads) };
}

const SHAPE = 5;
const ROUNDS = 8;
const BIWEIGHT = 4.685;
/** No surface is taken as steadier than paper is. */
const QUIETEST = 0.008;

function termsOf({ x, y }: SurfacePoint): readonly [number, number, number, number, number] {
  return [x, y, x * x, x * y, y * y];
}

function shapeAt(shape: Float64Array, point: SurfacePoint): number {
  return termsOf(point).reduce((sum, term, i) => sum + term * shape[i]!, 0);
}

function heightsOf(
  points: readonly SurfacePoint[],
  surfaces: number,
  shape: Float64Array,
): number[] {
  return Array.from({ length: surfaces }, (_, on) =>
    median(points.filter((p) => p.on === on).map((p) => p.value - shapeAt(shape, p))),
  );
}

function leastSquares(
  points: readonly SurfacePoint[],
  residuals: readonly number[],
  spreads: readonly number[],
  stiffness: number,
  ease: number,
): Float64Array {
  const size = SHAPE + spreads.length;
  const matrix = Array.from({ length: size }, () => new Float64Array(size + 1));
  const steadiest = Math.min(...spreads);
  let held = 0;
  points.forEach((point, i) => {
    const spread = spreads[point.on]!;
    const t = residuals[i]! / (BIWEIGHT * ease * spread);
    if (Math.abs(t) >= 1) return;
    const weight = (1 - t * t) ** 2 * (steadiest / spread) ** 2;
    held += weight;
    const terms = termsOf(point);
    const own = SHAPE + point.on;
    for (let r = 0; r < SHAPE; r++) {
      const row = matrix[r]!;
      for (let c = 0; c < SHAPE; c++) row[c]! += weight * terms[r]! * terms[c]!;
      row[own]! += weight * terms[r]!;
      row[size]! += weight * terms[r]! * point.value;
      matrix[own]![r]! += weight * terms[r]!;
    }
    matrix[own]![own]! += weight;
    matrix[own]![size]! += weight * point.value;
  });
  for (let r = 0; r < SHAPE; r++) matrix[r]![r]! += stiffness * held * (r < 2 ? 1 : 4);
  for (let r = SHAPE; r < size; r++) matrix[r]![r]! += 1e-9;
  return solve(matrix);
}
