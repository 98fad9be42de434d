import type { Lab } from './lab.ts';

/** Straight lines from one colour to another, ready to be asked which colours lie on them. */
export type Lines = Float64Array;

/** Numbers a line: its start, its course, and one over its squared length. */
const PARTS = 7;

export function linesOf(pairs: readonly (readonly [from: Lab, to: Lab])[]): Lines {
  const lines = new Float64Array(PARTS * pairs.length);
  pairs.forEach(([from, to], index) => {
    const [l, a, b] = [to.l - from.l, to.a - from.a, to.b - from.b];
    const squared = l * l + a * a + b * b;
    lines.set([from.l, from.a, from.b, l, a, b, squared === 0 ? 0 : 1 / squared], PARTS * index);
  });
  return lines;
}

/** Whether the colour at `at` of `lab` lies nearer to any of the lines than `near`, a squared distance. */
export function liesOn(lines: Lines, lab: Float64Array, at: number, near: number): boolean {
  for (let p = 0; p < lines.length; p += PARTS) {
    const l = lab[at]! - lines[p]!;
    const a = lab[at + 1]! - lines[p + 1]!;
    const b = lab[at + 2]! - lines[p + 2]!;
    const dl = lines[p + 3]!;
    const da = lines[p + 4]!;
    const db = lines[p + 5]!;
    const along = (l * dl + a * da + b * db) * lines[p + 6]!;
    const part = along < 0 ? 0 : along > 1 ? 1 : along;
    const offL = l - part * dl;
    const offA = a - part * da;
    const offB = b - part * db;
    if (offL * offL + offA * offA + offB * offB < near) return true;
  }
  return false;
}
