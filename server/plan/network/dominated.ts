import { strides } from './factor.ts';
import type { Factor } from './factor.ts';

/**
 * Values of a variable without which some best choice remains: a value goes when another is at least
 * as good whatever the other variables are (the criterion of Goldstein 1994, Biophys. J. 66,
 * 1335-1340). `rivals(a, b)` says whether b may stand in for a.
 */
export function undominated(
  factors: readonly Factor[],
  variable: number,
  size: number,
  rivals: (a: number, b: number) => boolean = () => true,
): number[] {
  const own = factors.filter((factor) => factor.scope.includes(variable));
  const kept = Array.from({ length: size }, () => true);
  for (let value = 0; value < size; value++) {
    for (let other = 0; other < size && kept[value]!; other++) {
      if (other === value || !kept[other]! || !rivals(value, other)) continue;
      let lead = 0;
      for (const factor of own) lead += greatestLead(factor, variable, value, other);
      if (lead <= 0) kept[value] = false;
    }
  }
  return kept.flatMap((keep, value) => (keep ? [value] : []));
}

/** The most by which `value` can beat `other` in this factor. */
function greatestLead(factor: Factor, variable: number, value: number, other: number): number {
  const at = factor.scope.indexOf(variable);
  const inner = strides(factor.sizes)[at]!;
  const block = inner * factor.sizes[at]!;
  let most = -Infinity;
  for (let start = 0; start < factor.data.length; start += block) {
    for (let step = 0; step < inner; step++) {
      const lead =
        factor.data[start + value * inner + step]! - factor.data[start + other * inner + step]!;
      if (lead > most) most = lead;
    }
  }
  return most;
}

/** The factor with one variable cut down to these values. */
export function cutDown(factor: Factor, variable: number, values: readonly number[]): Factor {
  const at = factor.scope.indexOf(variable);
  if (at < 0 || values.length === factor.sizes[at]!) return factor;
  const inner = strides(factor.sizes)[at]!;
  const block = inner * factor.sizes[at]!;
  const outer = factor.data.length / block;
  const data = new Float64Array(outer * values.length * inner);
  let cell = 0;
  for (let start = 0; start < factor.data.length; start += block) {
    for (const value of values)
      for (let step = 0; step < inner; step++)
        data[cell++] = factor.data[start + value * inner + step]!;
  }
  return {
    scope: factor.scope,
    sizes: factor.sizes.map((size, place) => (place === at ? values.length : size)),
    data,
  };
}
