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

/**
 * Takes       samples (three or more) and how strongly the surface is held flat: 0 lets it bend freely.
 * Source      Tukey's biweight, reweighted least squares: Holland, Welsch (1977),
 *             doi:10.1080/03610927708827533, table 1.
 */
export function fitSurface(samples: readonly Sample[], stiffness = 1e-3): Surface {
  let of: Float64Array = Float64Array.of(median(samples.map(({ value }) => value)), 0, 0, 0, 0, 0);
  let spread = Infinity;
  for (let round = 0; round < ROUNDS; round++) {
    const residuals = samples.map((sample) => sample.value - heightAt(of, sample.x, sample.y));
    spread = 1.4826 * median(residuals.map(Math.abs));
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
  samples: readonly Sample[],
  residuals: readonly number[],
  reach: number,
  stiffness: number,
): Float64Array {
  const matrix = Array.from({ length: TERMS }, () => new Float64Array(TERMS + 1));
  samples.forEach(({ x, y, value }, i) => {
    const t = residuals[i]! / reach;
    if (Math.abs(t) >= 1) return;
    const weight = (1 - t * t) ** 2;
    const terms = [1, x, y, x * x, x * y, y * y];
    for (let r = 0; r < TERMS; r++) {
      const row = matrix[r]!;
      for (let c = 0; c < TERMS; c++) row[c]! += weight * terms[r]! * terms[c]!;
      row[TERMS]! += weight * terms[r]! * value;
    }
  });
  const hold = stiffness * samples.length;
  for (let r = 1; r < TERMS; r++) matrix[r]![r]! += r < 3 ? hold : 4 * hold;
  matrix[0]![0]! += 1e-9;
  return solve(matrix);
}

/** Gaussian elimination with the largest pivot; the matrix is positive definite by the stiffness. */
export function solve(matrix: Float64Array[]): Float64Array {
  const n = matrix.length;
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let r = c + 1; r < n; r++)
      if (Math.abs(matrix[r]![c]!) > Math.abs(matrix[pivot]![c]!)) pivot = r;
    [matrix[c], matrix[pivot]] = [matrix[pivot]!, matrix[c]!];
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const factor = matrix[r]![c]! / matrix[c]![c]!;
      if (factor !== 0) for (let k = c; k <= n; k++) matrix[r]![k]! -= factor * matrix[c]![k]!;
    }
  }
  return Float64Array.from(matrix, (row, i) => row[n]! / row[i]!);
}

export function median(values: readonly number[] | Float32Array): number {
  if (values.length === 0) return 0;
  return Float64Array.from(values).sort()[values.length >> 1]!;
}
