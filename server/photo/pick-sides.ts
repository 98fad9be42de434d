import { polygonArea } from '../geometry/polygon.ts';
import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { isConvex } from '../geometry/quad.ts';
import { crossing } from './crossing.ts';
import type { Line } from './side-lines.ts';
import { offSize } from './table-metric.ts';
import type { TableMetric } from './table-metric.ts';

/** A line that a side may lie on, with what speaks for it. */
export interface Weighed extends Line {
  readonly worth: number;
  readonly outside: number;
}

export interface Picked {
  readonly quad: Quad<'photo'>;
  readonly lead: number;
  readonly lines: readonly Weighed[];
}

/**
 * The four edges that make the best sheet: well borne out, and of a sheet's size where that is known. `misfit` is the
 * part of a side by which it may be off its size before that counts like an edge half borne out.
 */
export function pickSides(
  sides: readonly (readonly Weighed[])[],
  metric: TableMetric | null,
  aspect: number,
  misfit: number,
): Picked | null {
  let best: Omit<Picked, 'lead'> | null = null;
  const tried: { readonly lines: readonly Weighed[]; readonly value: number }[] = [];
  let most = -Infinity;
  const [uppers, rights, lowers, lefts] = sides as [Sides, Sides, Sides, Sides];
  // Where each line meets each of the side before it, told once.
  const [atUpper, atRight, atLower, atLeft] = [
    meetings(lefts, uppers),
    meetings(uppers, rights),
    meetings(rights, lowers),
    meetings(lowers, lefts),
  ];
  for (const [u, upper] of uppers.entries())
    for (const [r, right] of rights.entries()) {
      const second = atRight[u]![r] ?? null;
      if (second === null) continue;
      for (const [b, lower] of lowers.entries()) {
        const third = atLower[r]![b] ?? null;
        if (third === null) continue;
        for (const [l, left] of lefts.entries()) {
          const first = atUpper[l]![u] ?? null;
          const fourth = atLeft[b]![l] ?? null;
          if (first === null || fourth === null) continue;
          const quad: Quad<'photo'> = [first, second, third, fourth];
          if (!isConvex(quad)) continue;
          const lines = [upper, right, lower, left];
          const value =
            upper.worth +
            right.worth +
            lower.worth +
            left.worth -
            (metric === null ? 0 : SIZE_COUNTS * misfitOf(offSize(metric, quad, aspect), misfit));
          tried.push({ lines, value });
          if (value > most) {
            most = value;
            best = { quad, lines };
          }
        }
      }
    }
  if (best === null) return null;
  const { lines } = best;
  const apart = DISTINCT * Math.sqrt(polygonArea(best.quad));
  let next = most - MOST_LEAD;
  for (const other of tried)
    if (
      other.value > next &&
      other.lines.some((line, side) => distance(line, lines[side]!) > apart)
    )
      next = other.value;
  return { ...best, lead: most - next };
}

type Sides = readonly Weighed[];

function meetings(before: Sides, after: Sides): (PhotoPoint | null)[][] {
  return before.map((one) => after.map((other) => crossing(one, other)));
}

const SIZE_COUNTS = 0.45;

const MOST_LEAD = 3;
/** Part of a side by which two lines lie apart at an end to count as two. */
const DISTINCT = 0.007;

function misfitOf(off: readonly number[], unit: number): number {
  return off.reduce((sum, value) => sum + Math.min(3, Math.abs(value) / unit), 0);
}

function distance(p: Line, q: Line): number {
  return Math.max(
    Math.hypot(p.from.x - q.from.x, p.from.y - q.from.y),
    Math.hypot(p.to.x - q.to.x, p.to.y - q.to.y),
  );
}

export function quadOfLines(lines: readonly Line[]): Quad<'photo'> | null {
  const corners = lines.map((line, side) => crossing(lines[(side + 3) % 4]!, line));
  if (corners.some((corner) => corner === null)) return null;
  const quad = corners as unknown as Quad<'photo'>;
  return isConvex(quad) ? quad : null;
}
