import type { Raw } from './orient.ts';

/**
 * Shrinks a picture by a whole number: each block of `by` x `by` pixels becomes their mean.
 * Pixels at the right and lower edge that fill no block are left out.
 */
export function shrink({ width, height, rgb }: Raw, by: number): Raw {
  if (by === 1) return { width, height, rgb };
  const outWidth = Math.floor(width / by);
  const outHeight = Math.floor(height / by);
  if (by === 4 && isAligned(width, rgb)) return quarter(width, rgb, outWidth, outHeight);
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

/** Whether rows begin where four bytes can be read at once, lowest byte first. */
function isAligned(width: number, rgb: Uint8Array): boolean {
  const isLowFirst = new Uint8Array(Uint32Array.of(1).buffer)[0] === 1;
  return isLowFirst && width % 4 === 0 && rgb.byteOffset % 4 === 0;
}

/**
 * The same for blocks of 4 x 4, four bytes at once: a phone's 12 megapixels come this way. Four pixels are three words;
 * every second byte of a word is summed in sixteen bits of its own.
 *
 *     R G B R   G B R G   B R G B
 */
function quarter(width: number, rgb: Uint8Array, outWidth: number, outHeight: number): Raw {
  const words = new Int32Array(rgb.buffer, rgb.byteOffset, rgb.byteLength >> 2);
  const row = (3 * width) >> 2;
  const out = new Uint8Array(3 * outWidth * outHeight);
  for (let y = 0, to = 0; y < outHeight; y++)
    for (let at = 4 * y * row, end = at + 3 * outWidth; at < end; at += 3, to += 3) {
      let even0 = 0;
      let odd0 = 0;
      let even1 = 0;
      let odd1 = 0;
      let even2 = 0;
      let odd2 = 0;
      for (let from = at, below = at + 4 * row; from < below; from += row) {
        const first = words[from]!;
        const second = words[from + 1]!;
        const third = words[from + 2]!;
        even0 += first & EVEN;
        odd0 += (first >>> 8) & EVEN;
        even1 += second & EVEN;
        odd1 += (second >>> 8) & EVEN;
        even2 += third & EVEN;
        odd2 += (third >>> 8) & EVEN;
      }
      out[to] = ((even0 & LOW) + (odd0 >>> 16) + (even1 >>> 16) + (odd2 & LOW) + 8) >> 4;
      out[to + 1] = ((odd0 & LOW) + (even1 & LOW) + (odd1 >>> 16) + (even2 >>> 16) + 8) >> 4;
      out[to + 2] = ((even0 >>> 16) + (odd1 & LOW) + (even2 & LOW) + (odd2 >>> 16) + 8) >> 4;
    }
  return { width: outWidth, height: outHeight, rgb: out };
}

const EVEN = 0x00ff00ff;
const LOW = 0xffff;
