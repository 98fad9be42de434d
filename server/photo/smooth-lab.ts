import { labOfBytes } from '../colour/spaces.ts';
import type { LabImage } from '../colour/lab.ts';
import { workRoom } from '../colour/work-room.ts';
import type { Picture } from './picture.ts';

/**
 * The preview in CIELAB with its noise taken down: each pixel is averaged with those of its eight
 * neighbours that are like it, so that edges and 2 mm gaps between sheets stay as sharp as they are.
 */
export function smoothLab({ width, height, rgb, primaries }: Picture): LabImage {
  const raw = labOfBytes(rgb, primaries, rawRoom(rgb.length));
  const lab = new Float32Array(rgb.length);
  const row = 3 * width;
  // The outermost pixels stay as they are.
  lab.set(raw.subarray(0, row));
  lab.set(raw.subarray((height - 1) * row), (height - 1) * row);
  for (let end = row; end < height * row; end += row)
    for (let at = end - 3; at < end + 3; at++) lab[at] = raw[at]!;
  const around = [-row - 3, -row, -row + 3, -3, 3, row - 3, row, row + 3];
  for (let y = 1; y < height - 1; y++)
    for (let at = 3 * (y * width + 1), end = 3 * ((y + 1) * width - 1); at < end; at += 3) {
      const l = raw[at]!;
      const a = raw[at + 1]!;
      const b = raw[at + 2]!;
      let count = 1;
      let sumL = l;
      let sumA = a;
      let sumB = b;
      for (let k = 0; k < 8; k++) {
        const p = at + around[k]!;
        const dl = raw[p]! - l;
        if (dl * dl > ALIKE) continue;
        const da = raw[p + 1]! - a;
        const db = raw[p + 2]! - b;
        if (dl * dl + da * da + db * db > ALIKE) continue;
        count++;
        sumL += l + dl;
        sumA += a + da;
        sumB += b + db;
      }
      lab[at] = sumL / count;
      lab[at + 1] = sumA / count;
      lab[at + 2] = sumB / count;
    }
  return { width, height, lab };
}

const rawRoom = workRoom((length) => new Float32Array(length));

/** Squared distance in CIELAB within which neighbours count as the same material. */
const ALIKE = 36;
