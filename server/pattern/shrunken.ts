import type { LabImage } from '../colour/lab.ts';

/**
 * The picture made smaller by a whole number: each pixel is the mean of a block. Rows and columns that do not
 * fill a block are left out.
 */
export function shrunken(image: LabImage, by: number): LabImage {
  if (by === 1) return image;
  const width = Math.floor(image.width / by);
  const height = Math.floor(image.height / by);
  const lab = new Float32Array(3 * width * height);
  const row = 3 * image.width;
  if (by === 2) {
    halve(image.lab, row, width, height, lab);
    return { width, height, lab };
  }
  const part = 1 / (by * by);
  for (let y = 0, to = 0; y < height; y++)
    for (let x = 0; x < width; x++, to += 3) {
      let l = 0;
      let a = 0;
      let b = 0;
      for (let dy = 0, line = by * (y * row + 3 * x); dy < by; dy++, line += row)
        for (let at = line; at < line + 3 * by; at += 3) {
          l += image.lab[at]!;
          a += image.lab[at + 1]!;
          b += image.lab[at + 2]!;
        }
      lab[to] = l * part;
      lab[to + 1] = a * part;
      lab[to + 2] = b * part;
    }
  return { width, height, lab };
}

/** The same for blocks of 2 x 2, as which nearly all swatches come. */
function halve(
  from: Float32Array,
  row: number,
  width: number,
  height: number,
  to: Float32Array,
): void {
  for (let y = 0, at = 0; y < height; y++)
    for (let upper = 2 * y * row, lower = upper + row, x = 0; x < width; x++) {
      to[at] = (from[upper]! + from[upper + 3]! + from[lower]! + from[lower + 3]!) / 4;
      to[at + 1] = (from[upper + 1]! + from[upper + 4]! + from[lower + 1]! + from[lower + 4]!) / 4;
      to[at + 2] = (from[upper + 2]! + from[upper + 5]! + from[lower + 2]! + from[lower + 5]!) / 4;
      at += 3;
      upper += 6;
      lower += 6;
    }
}
