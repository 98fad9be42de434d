import type { Labels } from './label-pixels.ts';
import type { Lab } from './lab.ts';

/**
 * The ground of a check (gingham): half of it is one colour, where two ribbons cross that differ, and a quarter each
 * are those where a ribbon crosses its like. The quarters lie alike, so their places do not tell which of them is
 * the ground; cloth of this kind is woven on the lighter thread (common practice, no source).
 *
 * Takes       which colour each pixel shows, the colours, and how much of the side each fills (in any unit).
 * Gives       the index of the ground, or null when the side is no check.
 */
export function checkGround(
  labels: Labels,
  colours: readonly Lab[],
  areas: Float64Array,
): number | null {
  const order = [...areas.keys()].sort((p, q) => areas[q]! - areas[p]!);
  const [half, one, other] = order;
  if (other === undefined) return null;
  const whole = areas.reduce((sum, area) => sum + area, 0);
  const near = (index: number, part: number): boolean =>
    Math.abs(areas[index]! / whole - part) < SLACK;
  if (!near(half!, 1 / 2) || !near(one!, 1 / 4) || !near(other, 1 / 4)) return null;
  if (!(
    partedInLines(labels, one!, other, 'rows') && partedInLines(labels, one!, other, 'columns')
  ))
    return null;
  return colours[one!]!.l >= colours[other]!.l ? one! : other;
}

/** How far the parts of a check may be from a half and a quarter. */
const SLACK = 0.08;

/** Whether nearly every row (or column) holds one of two colours and hardly any of the other. */
function partedInLines(
  { width, height, of }: Labels,
  one: number,
  other: number,
  way: 'rows' | 'columns',
): boolean {
  const lines = way === 'rows' ? height : width;
  const counts = new Float64Array(2 * lines);
  for (let y = 0, pixel = 0; y < height; y++)
    for (let x = 0; x < width; x++, pixel++) {
      const label = of[pixel]!;
      if (label === one) counts[2 * (way === 'rows' ? y : x)]! += 1;
      else if (label === other) counts[2 * (way === 'rows' ? y : x) + 1]! += 1;
    }
  let [less, both] = [0, 0];
  for (let line = 0; line < counts.length; line += 2) {
    less += Math.min(counts[line]!, counts[line + 1]!);
    both += counts[line]! + counts[line + 1]!;
  }
  return both > 0 && less < STRAYS * both;
}

/** Soft borders and a sheet that lies a little askew mix so much of the two. */
const STRAYS = 0.15;
