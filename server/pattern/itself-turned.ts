import { momentsOf } from './grid.ts';
import type { Grid } from './grid.ts';
import { SHARED, turnedLikeness } from './turned-likeness.ts';

/**
 * Whether a print turned by half is at least this like itself at some shift: the same as `turnedLikeness(grid).half() >= level`, in
 * a fifth of the time where it is. The shift is looked for at half the size and tried there and beside it at full size;
 * only where that does not show it are all shifts tried.
 *
 * Takes       a grid whose side is a power of two, and a likeness above 0.
 */
export function isItselfTurned(grid: Grid, level: number): boolean {
  const { x, y } = turnedLikeness(halved(grid)).halfAt();
  return likeAround(grid, 2 * x + 1, 2 * y + 1) >= level || turnedLikeness(grid).half() >= level;
}

function halved({ side, values }: Grid): Grid {
  const half = side / 2;
  const means = new Float64Array(half * half);
  for (let y = 0, at = 0; y < half; y++)
    for (let p = 2 * y * side, end = p + side; p < end; p += 2)
      means[at++] = (values[p]! + values[p + 1]! + values[p + side]! + values[p + side + 1]!) / 4;
  return { side: half, values: means };
}

/** The most like itself it is where field and field turned have these places together, or one more or less. */
function likeAround(grid: Grid, x: number, y: number): number {
  const { side, values } = grid;
  const { mean, variance } = momentsOf(grid);
  let most = 0;
  for (let down = y - 1; down <= y + 1; down++)
    for (let across = x - 1; across <= x + 1; across++)
      most = Math.max(most, productAt(values, side, mean, across, down));
  return variance > 0 ? most / variance : 0;
}

/** Mean product of the fields on which both lie; 0 where those are too few. */
function productAt(
  values: Float64Array,
  side: number,
  mean: number,
  across: number,
  down: number,
): number {
  const [left, top] = [Math.max(0, across - side + 1), Math.max(0, down - side + 1)];
  const [right, bottom] = [Math.min(side - 1, across), Math.min(side - 1, down)];
  const both = (right - left + 1) * (bottom - top + 1);
  if (right < left || bottom < top || both < SHARED * side * side) return 0;
  let sum = 0;
  for (let row = top; row <= bottom; row++) {
    let other = (down - row) * side + across - left;
    for (let at = row * side + left, end = row * side + right; at <= end; at++, other--)
      sum += (values[at]! - mean) * (values[other]! - mean);
  }
  return sum / both;
}
