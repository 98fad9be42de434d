import type { Mask } from './regions.ts';

/**
 * All pixels of a mask that can be walked to over its pixels, across and down, from some that are given. The mask is
 * used up on the way: what was reached is taken out of it.
 *
 * Method      a run of a row at a time: a run that is reached is taken whole, and the rows above and below it are
 *             looked at for runs that touch it.
 */
export function walkOver(mask: Mask, from: Int32Array): { reached: Uint8Array; count: number } {
  const { width, height, of } = mask;
  const reached = new Uint8Array(of.length);
  const open: number[] = [];
  let count = 0;
  for (const start of from) {
    if (of[start] === 1) open.push(start);
    while (open.length > 0) {
      const pixel = open.pop()!;
      if (of[pixel] === 0) continue;
      const first = pixel - (pixel % width);
      let left = pixel;
      while (left > first && of[left - 1] === 1) left--;
      let right = pixel + 1;
      while (right < first + width && of[right] === 1) right++;
      of.fill(0, left, right);
      reached.fill(1, left, right);
      count += right - left;
      if (first > 0) addRuns(of, left - width, right - width, open);
      if (first < (height - 1) * width) addRuns(of, left + width, right + width, open);
    }
  }
  return { reached, count };
}

/** A pixel of each run that begins within a stretch of a row, or reaches into it. */
function addRuns(of: Uint8Array, from: number, to: number, open: number[]): void {
  for (let at = from; at < to; at++) {
    if (of[at] === 0) continue;
    open.push(at);
    while (at < to && of[at] === 1) at++;
  }
}
