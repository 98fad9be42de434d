/**
 * A function over a few variables as a dense table, the last variable running fastest. Variables are
 * numbers, ascending in `scope`; `sizes` are the counts of their values.
 */
export interface Factor {
  readonly scope: readonly number[];
  readonly sizes: readonly number[];
  readonly data: Float64Array;
}

export function constantFactor(scope: readonly number[], sizes: readonly number[]): Factor {
  return { scope, sizes, data: new Float64Array(count(sizes)) };
}

export function count(sizes: readonly number[]): number {
  return sizes.reduce((product, size) => product * size, 1);
}

/** How far apart in `data` two neighbouring values of each variable stand. */
export function strides(sizes: readonly number[]): number[] {
  const steps = new Array<number>(sizes.length);
  let step = 1;
  for (let at = sizes.length - 1; at >= 0; at--) {
    steps[at] = step;
    step *= sizes[at]!;
  }
  return steps;
}

/** The value for one choice of a value for every variable. */
export function valueAt(factor: Factor, choice: ArrayLike<number>): number {
  let offset = 0;
  for (let at = 0; at < factor.scope.length; at++)
    offset = offset * factor.sizes[at]! + choice[factor.scope[at]!]!;
  return factor.data[offset]!;
}

/** Factors over the same variables added up into one. */
export function merged(factors: readonly Factor[]): Factor[] {
  const byScope = new Map<string, Factor>();
  for (const factor of factors) {
    const key = factor.scope.join(' ');
    const kept = byScope.get(key);
    if (kept === undefined) byScope.set(key, { ...factor, data: factor.data.slice() });
    else for (let at = 0; at < kept.data.length; at++) kept.data[at]! += factor.data[at]!;
  }
  return [...byScope.values()];
}
