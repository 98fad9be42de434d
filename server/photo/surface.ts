/**
 * A smooth surface over the photo: a polynomial of second order in x and y, fitted so that strays
 * (what lies on the table, glints, dark corners) do not bend it.
 */
export interface Surface {
  /** Coefficients of 1, x, y, xx, xy, yy with x and y in [-1, 1] over the photo. */
  readonly of: Float64Array;
  /** Typical distance of a sample from the surface (1.4826 x median: one sigma for normal noise). */
  readonly spread: number;
}

export interface Sample {
  /** Place in [-1, 1]. */
  readonly x: number;
  readonly y: number;
  readonly value: number;
}

const TERMS = 6;

/** Samples as they are computed with: x, y and value of each by turns. */
export type PackedSamples = Float64Array;

/**
 * Takes       samples (three or more) and how strongly the surface is held flat: 0 lets it bend freely.
 * Source      Tukey's biweight, reweighted least squares: Holland, Welsch (1977),
 *             doi:10.1080/03610927708827533, table 1.
 */
export function fitSurface(samples: readonly Sample[], stiffness = 1e-3): Surface {
  const packed = new Float64Array(3 * samples.length);
  samples.forEach(({ x, y, value }, i) => packed.set([x, y, value], 3 * i));
  return fitPacked(packed, stiffness);
}

/** The same for samples that lie packed in one array, x, y, value by turns. */
export function fitPacked(samples: PackedSamples, stiffness = 1e-3): Surface {
  const count = samples.length / 3;
  const residuals = new Float64Array(count);
  const sizes = new Float64Array(count);
  for (let i = 0; i < count; i++) sizes[i] = samples[3 * i + 2]!;
  let of: Float64Array = Float64Array.of(medianInPlace(sizes), 0, 0, 0, 0, 0);
  let spread = Infinity;
  for (let round = 0; round < ROUNDS; round++) {
    for (let i = 0, at = 0; i < count; i++, at += 3) {
      const residual = samples[at + 2]! - heightAt(of, samples[at]!, samples[at + 1]!);
      residuals[i] = residual;
      sizes[i] = Math.abs(residual);
    }
    spread = 1.4826 * medianInPlace(sizes);
    const reach = BIWEIGHT * Math.max(spread, 1e-6) * (round < 3 ? 2 : 1);
    of = leastSquares(samples, residuals, reach, stiffness);
  }
  return { of, spread };
}

const ROUNDS = 8;
const BIWEIGHT = 4.685;

export function heightAt(of: Float64Array, x: number, y: number): number {
  return of[0]! + of[1]! * x + of[2]! * y + of[3]! * x * x + of[4]! * x * y + of[5]! * y * y;
}

function leastSquares(
  samples: PackedSamples,
  residuals: Float64Array,
  reach: number,
  stiffness: number,
): Float64Array {
  const sums = new Float64Array(TERMS * (TERMS + 1));
  const terms = new Float64Array(TERMS + 1);
  terms[0] = 1;
  for (let i = 0, at = 0; i < residuals.length; i++, at += 3) {
    const t = residuals[i]! / reach;
    if (t >= 1 || t <= -1) continue;
    const weight = (1 - t * t) * (1 - t * t);
    const x = samples[at]!;
    const y = samples[at + 1]!;
    terms[1] = x;
    terms[2] = y;
    terms[3] = x * x;
    terms[4] = x * y;
    terms[5] = y * y;
    terms[6] = samples[at + 2]!;
    for (let r = 0; r < TERMS; r++) {
      const weighed = weight * terms[r]!;
      for (let c = r; c <= TERMS; c++) sums[r * (TERMS + 1) + c]! += weighed * terms[c]!;
    }
  }
  const matrix = Array.from({ length: TERMS }, (_, r) =>
    sums.slice(r * (TERMS + 1), (r + 1) * (TERMS + 1)),
  );
  for (let r = 1; r < TERMS; r++) for (let c = 0; c < r; c++) matrix[r]![c] = matrix[c]![r]!;
  const hold = stiffness * residuals.length;
  for (let r = 1; r < TERMS; r++) matrix[r]![r]! += r < 3 ? hold : 4 * hold;
  matrix[0]![0]! += 1e-9;
  return solve(matrix);
}

/** Gaussian elimination with the largest pivot; the matrix is positive definite by the stiffness. */
export function solve(matrix: Float64Array[]): Float64Array {
  const n = matrix.length;
  return Float64Array.from(solveAll(matrix), (row) => row[n]!);
}

/**
 * The same for several right sides at once, which follow the unknowns in each row. The rows given are worked in; those that
 * come out hold the solutions where the right sides stood.
 */
export function solveAll(matrix: Float64Array[]): Float64Array[] {
  const n = matrix.length;
  const length = matrix[0]?.length ?? 0;
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++)
      if (Math.abs(matrix[r]![c]!) > Math.abs(matrix[pivot]![c]!)) pivot = r;
    [matrix[c], matrix[pivot]] = [matrix[pivot]!, matrix[c]!];
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const factor = matrix[r]![c]! / matrix[c]![c]!;
      if (factor === 0) continue;
      const [row, from] = [matrix[r]!, matrix[c]!];
      for (let k = c; k < length; k++) row[k]! -= factor * from[k]!;
    }
  }
  matrix.forEach((row, i) => {
    for (let k = n; k < length; k++) row[k]! /= row[i]!;
  });
  return matrix;
}

export function median(values: readonly number[] | Float32Array): number {
  if (values.length === 0) return 0;
  return medianInPlace(Float64Array.from(values));
}

/** The upper median; the array is left in another order. Source: Hoare (1961), algorithm 65, Find. */
export function medianInPlace(values: Float64Array | Float32Array): number {
  return rankInPlace(values, values.length >> 1);
}

/** The value that would stand at a place if the array were sorted; it is left in another order. */
export function rankInPlace(values: Float64Array | Float32Array, place: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const pivot = values[(low + high) >> 1]!;
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i]! < pivot) i++;
      while (values[j]! > pivot) j--;
      if (i <= j) {
        const held = values[i]!;
        values[i++] = values[j]!;
        values[j--] = held;
      }
    }
    if (place <= j) high = j;
    else if (place >= i) low = i;
    else break;
  }
  return values[place]!;
}
