import type { Mask } from './regions.ts';

/**
 * Takes away whatever is thinner than `2 by + 1` pixels: grid lines, threads, the mixed pixels between
 * motifs of a cloth. What stays keeps its outline.
 */
export function withoutThin(mask: Mask, by: number): Mask {
  const rows = packed(mask);
  takeThin(rows, mask, by);
  return unpacked(rows, mask);
}

/**
 * Fills whatever is narrower than `2 by + 1` pixels between parts of a mask, the ground between motifs, and then takes
 * away what is still thin.
 */
export function filledWithoutThin(mask: Mask, by: number): Mask {
  const rows = packed(mask);
  fillGaps(rows, mask, by);
  takeThin(rows, mask, by);
  return unpacked(rows, mask);
}

/** Fills whatever is narrower than `2 by + 1` pixels between parts of a mask. */
export function withoutGaps(mask: Mask, by: number): Mask {
  const rows = packed(mask);
  fillGaps(rows, mask, by);
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

function takeThin(rows: Rows, { width, height }: Mask, by: number): void {
  complement(rows, width);
  grow(rows, height, by);
  complement(rows, width);
  grow(rows, height, by);
}

function fillGaps(rows: Rows, { width, height }: Mask, by: number): void {
  grow(rows, height, by);
  complement(rows, width);
  grow(rows, height, by);
  complement(rows, width);
}

function packed({ width, height, of }: Mask): Rows {
  const across = (width + 31) >> 5;
  const words = new Int32Array(across * height);
  for (let y = 0, pixel = 0; y < height; y++)
    for (let x = 0, at = y * across; x < width; at++) {
      let word = 0;
      const whole = Math.min(32, width - x) & ~3;
      for (let bit = 0; bit < whole; bit += 4, pixel += 4)
        word |=
          (of[pixel]! | (of[pixel + 1]! << 1) | (of[pixel + 2]! << 2) | (of[pixel + 3]! << 3)) <<
          bit;
      x += whole;
      for (let bit = whole; bit < 32 && x < width; bit++, x++, pixel++) word |= of[pixel]! << bit;
      words[at] = word;
    }
  return { words, across };
}

function unpacked({ words, across }: Rows, { width, height }: Mask): Mask {
  const of = new Uint8Array(width * height);
  for (let y = 0; y < height; y++)
    for (let column = 0, at = y * across; column < across; column++, at++) {
      const word = words[at]!;
      if (word === 0) continue;
      const from = y * width + 32 * column;
      const count = Math.min(32, width - 32 * column);
      if (word === -1) of.fill(1, from, from + count);
      else for (let bit = 0; bit < count; bit++) of[from + bit] = (word >>> bit) & 1;
    }
  return { width, height, of };
}

/** Turns a mask inside out; what lies right of the picture stays empty. */
function complement(rows: Rows, width: number): void {
  const { words } = rows;
  for (let at = 0; at < words.length; at++) words[at] = ~words[at]!;
  cutOff(rows, width);
}

/** Empties what lies right of the picture. */
function cutOff({ words, across }: Rows, width: number): void {
  if ((width & 31) === 0) return;
  const last = (1 << (width & 31)) - 1;
  for (let at = across - 1; at < words.length; at += across) words[at]! &= last;
}

/**
 * Along the rows, then along the columns. What has grown by n pixels is laid down again up to n + 1 pixels to both
 * sides, so that each step grows it to twice its width. No further, or a hole would be left at the picture's rim, past
 * which nothing is kept.
 *
 *     |#     ->  |##     ->  |####
 */
function grow({ words, across }: Rows, height: number, by: number): void {
  for (let grown = 0; grown < by;) {
    const step = Math.min(by - grown, grown + 1, 31);
    growAcross(words, across, step);
    grown += step;
  }
  const before = by > 0 ? new Int32Array(words.length) : words;
  for (let grown = 0; grown < by;) {
    const step = Math.min(by - grown, grown + 1);
    growDown(words, across, height, step, before);
    grown += step;
  }
}

/** Bits past the right end grow in, but no further back than what they came from has grown by itself. */
function growAcross(words: Int32Array, across: number, step: number): void {
  const back = 32 - step;
  for (let first = 0; first < words.length; first += across) {
    let before = 0;
    for (let at = first, end = first + across; at < end; at++) {
      const here = words[at]!;
      const after = at + 1 < end ? words[at + 1]! : 0;
      words[at] = here | (here << step) | (here >>> step) | (before >>> back) | (after << back);
      before = here;
    }
  }
}

function growDown(
  words: Int32Array,
  across: number,
  height: number,
  step: number,
  before: Int32Array,
): void {
  before.set(words);
  const by = step * across;
  const end = height * across;
  for (let at = by; at < end; at++) words[at]! |= before[at - by]!;
  for (let at = by; at < end; at++) words[at - by]! |= before[at]!;
}
