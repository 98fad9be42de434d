import { constantFactor, strides, valueAt } from './factor.ts';
import type { Factor } from './factor.ts';

/** A variable that was maximised out, with the factors that it stood in. */
export interface Bucket {
  readonly variable: number;
  readonly size: number;
  readonly factors: readonly Factor[];
}

export interface Eliminated {
  /** What is left, over the other variables. */
  readonly factors: readonly Factor[];
  /** In the order of their going. */
  readonly buckets: readonly Bucket[];
}

/**
 * Maximises variables out exactly, the one with the fewest neighbours first (bucket elimination:
 * Dechter 1999, Artificial Intelligence 113, 41-85).
 */
export function maximiseOut(
  factors: readonly Factor[],
  variables: readonly number[],
  sizeOf: (variable: number) => number,
): Eliminated {
  let left = [...factors];
  const waiting = new Set(variables);
  const buckets: Bucket[] = [];
  while (waiting.size > 0) {
    const variable = fewestNeighbours(left, waiting);
    waiting.delete(variable);
    const bucket = left.filter((factor) => factor.scope.includes(variable));
    left = left.filter((factor) => !factor.scope.includes(variable));
    const size = sizeOf(variable);
    buckets.push({ variable, size, factors: bucket });
    if (bucket.length > 0) left.push(eliminate(bucket, variable, size));
  }
  return { factors: left, buckets };
}

/** Finds the best values of the eliminated variables, the last one first; `choice` holds the others. */
export function decode(buckets: readonly Bucket[], choice: number[]): void {
  for (const bucket of [...buckets].reverse()) {
    let best = -Infinity;
    let chosen = 0;
    for (let value = 0; value < bucket.size; value++) {
      choice[bucket.variable] = value;
      const sum = bucket.factors.reduce((total, factor) => total + valueAt(factor, choice), 0);
      if (sum > best) {
        best = sum;
        chosen = value;
      }
    }
    choice[bucket.variable] = chosen;
  }
}

function fewestNeighbours(factors: readonly Factor[], waiting: ReadonlySet<number>): number {
  let best = -1;
  let least = Infinity;
  for (const variable of waiting) {
    const neighbours = new Set(
      factors.filter((factor) => factor.scope.includes(variable)).flatMap((factor) => factor.scope),
    );
    if (neighbours.size < least) {
      least = neighbours.size;
      best = variable;
    }
  }
  return best;
}

function eliminate(bucket: readonly Factor[], variable: number, size: number): Factor {
  const sizes = new Map<number, number>();
  for (const factor of bucket)
    factor.scope.forEach((member, at) => sizes.set(member, factor.sizes[at]!));
  sizes.delete(variable);
  const scope = [...sizes.keys()].sort((a, b) => a - b);
  const out = constantFactor(
    scope,
    scope.map((member) => sizes.get(member)!),
  );
  const steps = bucket.map((factor) => stepsAlong(factor, scope));
  const own = bucket.map((factor) => strides(factor.sizes)[factor.scope.indexOf(variable)]!);
  const offsets = new Array<number>(bucket.length).fill(0);
  const digits = new Array<number>(scope.length).fill(0);
  for (let cell = 0; cell < out.data.length; cell++) {
    out.data[cell] = best(bucket, offsets, own, size);
    advance(digits, out.sizes, offsets, steps);
  }
  return out;
}

/** How far each factor's offset moves when a variable of `scope` goes up by one; 0 where it is absent. */
function stepsAlong(factor: Factor, scope: readonly number[]): number[] {
  const own = strides(factor.sizes);
  return scope.map((variable) => {
    const at = factor.scope.indexOf(variable);
    return at < 0 ? 0 : own[at]!;
  });
}

/** Counts `digits` up by one, the last fastest, and moves every offset along. */
function advance(
  digits: number[],
  sizes: readonly number[],
  offsets: number[],
  steps: readonly (readonly number[])[],
): void {
  for (let at = digits.length - 1; at >= 0; at--) {
    const turned = digits[at]! + 1 === sizes[at]!;
    const move = turned ? -digits[at]! : 1;
    digits[at] = digits[at]! + move;
    for (let factor = 0; factor < offsets.length; factor++)
      offsets[factor]! += move * steps[factor]![at]!;
    if (!turned) return;
  }
}

function best(
  bucket: readonly Factor[],
  offsets: readonly number[],
  own: readonly number[],
  size: number,
): number {
  let most = -Infinity;
  for (let value = 0; value < size; value++) {
    let sum = 0;
    for (let at = 0; at < bucket.length; at++)
      sum += bucket[at]!.data[offsets[at]! + value * own[at]!]!;
    if (sum > most) most = sum;
  }
  return most;
}
