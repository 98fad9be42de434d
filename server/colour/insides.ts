import type { Labels } from './label-pixels.ts';

/**
 * Which pixels lie well inside a printed shape: they are flat, and their eight neighbours show the same colour.
 *
 * Takes       which colour each pixel shows, and which pixels are flat.
 * Gives       one byte a pixel, 1 inside; none at the rim of the picture.
 */
export function insidePixels({ width, height, of }: Labels, flat: Uint8Array): Uint8Array {
  const inside = new Uint8Array(width * height);
  for (let y = 1; y < height - 1; y++) {
    const first = y * width;
    // A column of three pixels is told by its colour, or MIXED; three columns alike make an inside.
    let left = column(of, first, width);
    let middle = column(of, first + 1, width);
    for (let at = first + 1, end = first + width - 1; at < end; at++) {
      const right = column(of, at + 1, width);
      if (middle === left && middle === right && middle !== MIXED) inside[at] = flat[at]!;
      left = middle;
      middle = right;
    }
  }
  return inside;
}

const MIXED = -1;

function column(of: Uint8Array, at: number, width: number): number {
  const label = of[at]!;
  return of[at - width] === label && of[at + width] === label ? label : MIXED;
}

/** Pixels of each colour that lie inside. */
export function countInsides({ of }: Labels, inside: Uint8Array, colours: number): Float64Array {
  const counts = new Float64Array(colours);
  for (let pixel = 0; pixel < of.length; pixel++) if (inside[pixel] === 1) counts[of[pixel]!]! += 1;
  return counts;
}
