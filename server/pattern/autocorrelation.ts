import { workRoom } from '../colour/work-room.ts';
import type { Grid } from './grid.ts';

/** How alike a picture and its shifted self are, for shifts along the two axes from 0 to `furthest` fields. */
export interface Autocorrelation {
  readonly furthest: number;
  /** Likeness at a shift: 1 for no shift, about 0 where nothing agrees. */
  readonly across: Float64Array;
  readonly down: Float64Array;
}

/**
 * The autocorrelation of several maps of one picture together, each shift weighed by its own overlap
 * only, so that the sheet's edges do not matter.
 *
 * Repeats are sought along the axes alone, and there the plain sums take a third of the time of a fast
 * Fourier transform of the whole.
 *
 * Takes       grids of the same side, the furthest shift, less than the side, and which rows and columns are
 *             looked at: every one, or every second and so on, since those beside it show nearly the same.
 * Gives       likeness in about [-1, 1]; a picture without any contrast is unlike itself everywhere.
 */
export function autocorrelation(
  maps: readonly Grid[],
  furthest: number,
  every = 1,
): Autocorrelation {
  const across = new Float64Array(furthest + 1);
  const down = new Float64Array(furthest + 1);
  let squares = 0;
  for (const { side, values } of maps) {
    const rows = withoutMean(values, levelRoom(values.length));
    for (let at = rows.length - 1; at >= 0; at--) squares += rows[at]! * rows[at]!;
    addProducts(rows, side, every, across);
    addProducts(turned(rows, side, turnedRoom(values.length)), side, every, down);
  }
  const { side } = maps[0]!;
  const variance = squares / (side * side);
  const rows = Math.ceil(side / every);
  for (const sums of [across, down])
    for (let shift = 0; shift <= furthest; shift++)
      sums[shift] = variance > FAINT ? sums[shift]! / ((side - shift) * rows) / variance : 0;
  return { furthest, across, down };
}

/** Adds, for each shift along the rows, the products of what then lies on each other: four shifts at a time. */
function addProducts(values: Float64Array, side: number, every: number, sums: Float64Array): void {
  // Beyond its end a row is followed by nothing, so that the four shifts may run equally far.
  const row = new Float64Array(side + 4);
  for (let first = 0; first < values.length; first += every * side) {
    row.set(values.subarray(first, first + side));
    for (let shift = 0; shift < sums.length; shift += 4) {
      let p = 0;
      let q = 0;
      let r = 0;
      let s = 0;
      for (let at = 0, other = shift; other < side; at++, other++) {
        const here = row[at]!;
        p += here * row[other]!;
        q += here * row[other + 1]!;
        r += here * row[other + 2]!;
        s += here * row[other + 3]!;
      }
      sums[shift]! += p;
      if (shift + 1 < sums.length) sums[shift + 1]! += q;
      if (shift + 2 < sums.length) sums[shift + 2]! += r;
      if (shift + 3 < sums.length) sums[shift + 3]! += s;
    }
  }
}

const levelRoom = workRoom((length) => new Float64Array(length));
const turnedRoom = workRoom((length) => new Float64Array(length));

function withoutMean(values: Float64Array, out: Float64Array): Float64Array {
  let sum = 0;
  for (const value of values) sum += value;
  const mean = sum / values.length;
  for (let at = out.length - 1; at >= 0; at--) out[at] = values[at]! - mean;
  return out;
}

/** Columns as rows. */
function turned(values: Float64Array, side: number, out: Float64Array): Float64Array {
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) out[x * side + y] = values[y * side + x]!;
  return out;
}

/** Variance below which a picture counts as plain, in squared CIELAB units. */
const FAINT = 0.02;
