import type { LabImage } from '../colour/lab.ts';

/** A square raster of numbers, row by row. */
export interface Grid {
  readonly side: number;
  readonly values: Float64Array;
}

/** The picture's three channels, each averaged over `side` x `side` equal fields. */
export function channelsOf({ width, height, lab }: LabImage, side: number): [Grid, Grid, Grid] {
  const ofL = new Float64Array(side * side);
  const ofA = new Float64Array(side * side);
  const ofB = new Float64Array(side * side);
  const counts = new Float64Array(side * side);
  const column = Int32Array.from({ length: width }, (_, x) => Math.floor((x * side) / width));
  for (let y = 0, at = 0; y < height; y++) {
    const row = Math.floor((y * side) / height) * side;
    for (let x = 0; x < width; x++, at += 3) {
      const field = row + column[x]!;
      counts[field]! += 1;
      ofL[field]! += lab[at]!;
      ofA[field]! += lab[at + 1]!;
      ofB[field]! += lab[at + 2]!;
    }
  }
  for (const sum of [ofL, ofA, ofB])
    for (let i = 0; i < sum.length; i++) sum[i]! /= Math.max(1, counts[i]!);
  return [
    { side, values: ofL },
    { side, values: ofA },
    { side, values: ofB },
  ];
}

/** A map of the picture's pixels averaged over `side` x `side` equal fields. */
export function averaged(map: Float32Array, width: number, height: number, side: number): Grid {
  const values = new Float64Array(side * side);
  const counts = new Float64Array(side * side);
  const column = Int32Array.from({ length: width }, (_, x) => Math.floor((x * side) / width));
  for (let y = 0, pixel = 0; y < height; y++) {
    const row = Math.floor((y * side) / height) * side;
    for (let x = 0; x < width; x++, pixel++) {
      const field = row + column[x]!;
      values[field]! += map[pixel]!;
      counts[field]! += 1;
    }
  }
  for (let i = 0; i < values.length; i++) values[i]! /= Math.max(1, counts[i]!);
  return { side, values };
}

/** The grid turned clockwise by a quarter. */
export function quarterTurned({ side, values }: Grid): Grid {
  const turned = new Float64Array(values.length);
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) turned[x * side + (side - 1 - y)] = values[y * side + x]!;
  return { side, values: turned };
}
