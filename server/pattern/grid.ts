import type { LabImage } from '../colour/lab.ts';

/** A square raster of numbers, row by row. */
export interface Grid {
  readonly side: number;
  readonly values: Float64Array;
}

/** The picture's three channels, each averaged over `side` x `side` equal fields. */
export function channelsOf({ width, height, lab }: LabImage, side: number): [Grid, Grid, Grid] {
  const channel = (axis: number): Grid => averagedOf(lab.subarray(axis), 3, width, height, side);
  return [channel(0), channel(1), channel(2)];
}

/** A map of the picture's pixels averaged over `side` x `side` equal fields. */
export function averaged(map: Float32Array, width: number, height: number, side: number): Grid {
  return averagedOf(map, 1, width, height, side);
}

/** The same for a map whose pixels lie `step` numbers apart. */
function averagedOf(
  map: Float32Array,
  step: number,
  width: number,
  height: number,
  side: number,
): Grid {
  const values = new Float64Array(side * side);
  const columns = firstOf(width, side);
  const rows = firstOf(height, side);
  for (let row = 0; row < side; row++) {
    const fields = row * side;
    for (let y = rows[row]!; y < rows[row + 1]!; y++)
      for (let column = 0, at = step * y * width; column < side; column++) {
        let sum = 0;
        for (const end = step * (y * width + columns[column + 1]!); at < end; at += step)
          sum += map[at]!;
        values[fields + column]! += sum;
      }
    const down = rows[row + 1]! - rows[row]!;
    for (let column = 0; column < side; column++)
      values[fields + column]! /= Math.max(1, down * (columns[column + 1]! - columns[column]!));
  }
  return { side, values };
}

/** The first of so many pixels in each of `side` equal fields, and behind the last. */
function firstOf(pixels: number, side: number): Int32Array {
  return Int32Array.from({ length: side + 1 }, (_, field) => Math.ceil((field * pixels) / side));
}

/** The grid turned clockwise by a quarter. */
export function quarterTurned({ side, values }: Grid): Grid {
  const turned = new Float64Array(values.length);
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) turned[x * side + (side - 1 - y)] = values[y * side + x]!;
  return { side, values: turned };
}

/** Mean and variance of the fields. */
export function momentsOf({ values }: Grid): { readonly mean: number; readonly variance: number } {
  let [sum, squares] = [0, 0];
  for (let at = values.length - 1; at >= 0; at--) sum += values[at]!;
  const mean = sum / values.length;
  for (let at = values.length - 1; at >= 0; at--) squares += (values[at]! - mean) ** 2;
  return { mean, variance: squares / values.length };
}
