import type { Raw } from './orient.ts';

/**
 * Shrinks a picture by a whole number: each block of `by` x `by` pixels becomes their mean.
 * Pixels at the right and lower edge that fill no block are left out.
 */
export function shrink({ width, height, rgb }: Raw, by: number): Raw {
  if (by === 1) return { width, height, rgb };
  const outWidth = Math.floor(width / by);
  const outHeight = Math.floor(height / by);
  const out = new Uint8Array(3 * outWidth * outHeight);
  const sums = new Uint32Array(3 * outWidth);
  const half = (by * by) >> 1;
  for (let y = 0; y < outHeight; y++) {
    sums.fill(0);
    for (let dy = 0; dy < by; dy++) {
      let from = 3 * width * (y * by + dy);
      for (let to = 0; to < sums.length; to += 3) {
        let [r, g, b] = [0, 0, 0];
        for (let dx = 0; dx < by; dx++, from += 3) {
          r += rgb[from]!;
          g += rgb[from + 1]!;
          b += rgb[from + 2]!;
        }
        sums[to]! += r;
        sums[to + 1]! += g;
        sums[to + 2]! += b;
      }
    }
    const row = 3 * outWidth * y;
    for (let to = 0; to < sums.length; to++) out[row + to] = (sums[to]! + half) / (by * by);
  }
  return { width: outWidth, height: outHeight, rgb: out };
}
