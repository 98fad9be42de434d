import type { Mask } from './regions.ts';

/**
 * Takes away whatever is thinner than `2 by + 1` pixels: grid lines, threads, the mixed pixels between
 * motifs of a cloth. What stays keeps its outline.
 */
export function withoutThin(mask: Mask, by: number): Mask {
  const rows = packed(mask);
  complement(rows, mask.width);
  grow(rows, mask.height, by);
  complement(rows, mask.width);
  grow(rows, mask.height, by);
  return unpacked(rows, mask);
}

/** Fills whatever is narrower than `2 by + 1` pixels between parts of a mask: the ground between motifs. */
export function withoutGaps(mask: Mask, by: number): Mask {
  const rows = packed(mask);
  grow(rows, mask.height, by);
  complement(rows, mask.width);
  grow(rows, mask.height, by);
  complement(rows, mask.width);
  return unpacked(rows, mask);
}

/** Lets every pixel of a mask spread over a square of `2 by + 1` pixels. */
export function spreadOut(mask: Mask, by: number): Mask {
  const rows = packed(mask);
  grow(rows, mask.height, by);
  return unpacked(rows, mask);
}

/** A mask with 32 pixels to a word, lowest bit leftmost: growing then works on 32 of them at once. */
interface Rows {
  readonly words: Int32Array;
  /** Words a row. */
  readonly across: number;
}

function packed({ width, height, of }: Mask): Rows {
  const across = (width + 31) >> 5;
  const words = new Int32Array(across * height);
  for (let y = 0, pixel = 0; y < height; y++)
    for (let x = 0, at = y * across; x < width; at++) {
      let word = 0;
      for (let bit = 0; bit < 32 && x < width; bit++, x++, pixel++) word |= of[pixel]! << bit;
      words[at] = word;
    }
  return { words, across };
}

function unpacked({ words, across }: Rows, { width, height }: Mask): Mask {
  const of = new Uint8Array(width * height);
  for (let y = 0, pixel = 0; y < height; y++)
    for (let x = 0, at = y * across; x < width; at++) {
      const word = words[at]!;
      for (let bit = 0; bit < 32 && x < width; bit++, x++, pixel++) of[pixel] = (word >>> bit) & 1;
    }
  return { width, height, of };
}

/** Turns a mask inside out; what lies right of the picture stays empty. */
function complement({ words, across }: Rows, width: number): void {
  const last = (width & 31) === 0 ? -1 : (1 << (width & 31)) - 1;
  for (let at = 0; at < words.length; at++) words[at] = ~words[at]!;
  for (let at = across - 1; at < words.length; at += across) words[at]! &= last;
}

/** By one pixel at a time: along the rows, then along the columns. Bits past the right end grow in, and are cut off at the end. */
function grow({ words, across }: Rows, height: number, by: number): void {
  for (let time = 0; time < by; time++) {
    for (let first = 0; first < words.length; first += across) {
      let before = 0;
      for (let at = first, end = first + across; at < end; at++) {
        const here = words[at]!;
        const after = at + 1 < end ? words[at + 1]! : 0;
        words[at] = here | (here << 1) | (here >>> 1) | (before >>> 31) | (after << 31);
        before = here;
      }
    }
    const above = new Int32Array(across);
    for (let y = 0; y < height; y++)
      for (let column = 0, at = y * across; column < across; column++, at++) {
        const here = words[at]!;
        words[at] = here | above[column]! | (y + 1 < height ? words[at + across]! : 0);
        above[column] = here;
      }
  }
}
