import { labOfBytes } from '../colour/spaces.ts';
import type { LabImage } from '../colour/lab.ts';
import type { Picture } from './picture.ts';

/**
 * The preview in CIELAB with its noise taken down: each pixel is averaged with those of its eight
 * neighbours that are like it, so that edges and 2 mm gaps between sheets stay as sharp as they are.
 */
export function smoothLab({ width, height, rgb, primaries }: Picture): LabImage {
  const raw = labOfBytes(rgb, primaries);
  const lab = raw.slice();
  const row = 3 * width;
  for (let y = 1; y < height - 1; y++)
    for (let at = 3 * (y * width + 1), end = 3 * ((y + 1) * width - 1); at < end; at += 3) {
      const l = raw[at]!;
      const a = raw[at + 1]!;
      const b = raw[at + 2]!;
      let [count, sumL, sumA, sumB] = [1, l, a, b];
      for (let up = at - row; up <= at + row; up += row)
        for (let p = up - 3; p <= up + 3; p += 3) {
          const dl = raw[p]! - l;
          const da = raw[p + 1]! - a;
          const db = raw[p + 2]! - b;
          if (p === at || dl * dl + da * da + db * db > ALIKE) continue;
          count++;
          sumL += raw[p]!;
          sumA += raw[p + 1]!;
          sumB += raw[p + 2]!;
        }
      lab[at] = sumL / count;
      lab[at + 1] = sumA / count;
      lab[at + 2] = sumB / count;
    }
  return { width, height, lab };
}

/** Squared distance in CIELAB within which neighbours count as the same material. */
const ALIKE = 36;
