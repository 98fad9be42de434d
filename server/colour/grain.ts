import type { LabImage } from './lab.ts';

/**
 * How much the tone of a paper of one colour runs: a wash clouds, woven threads are uneven, while plain
 * paper in uneven light only slopes.
 *
 * The picture is averaged over small blocks, which takes away the noise; what neighbouring blocks differ
 * by is grain, because light changes too slowly to show between them.
 *
 * Takes       a flat picture of one colour.
 * Gives       the standard deviation of the grain in CIELAB lightness.
 */
export function grainOf({ width, height, lab }: LabImage): number {
  const [columns, rows] = [Math.floor(width / BLOCK), Math.floor(height / BLOCK)];
  const blocks = new Float64Array(columns * rows);
  for (let y = 0; y < rows * BLOCK; y++)
    for (let column = 0, at = 3 * y * width; column < columns; column++) {
      let line = 0;
      for (const end = at + 3 * BLOCK; at < end; at += 3) line += lab[at]!;
      blocks[Math.floor(y / BLOCK) * columns + column]! += line / BLOCK ** 2;
    }
  let [sum, pairs] = [0, 0];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const here = blocks[row * columns + column]!;
      if (column > 0) {
        sum += (here - blocks[row * columns + column - 1]!) ** 2;
        pairs++;
      }
      if (row > 0) {
        sum += (here - blocks[(row - 1) * columns + column]!) ** 2;
        pairs++;
      }
    }
  return pairs === 0 ? 0 : Math.sqrt(sum / pairs / 2);
}

/** Pixels a side of a block. */
const BLOCK = 8;
