import type { Labels } from '../colour/label-pixels.ts';
import { workRoom } from '../colour/work-room.ts';

/**
 * How big the printed shapes are: the diameter of round shapes of the same width.
 *
 * For each pixel of a shape the narrowest of four straight runs through it (across, down and both
 * slants) is its local width; the mean is scaled so that a print of equal dots gives their diameter.
 *
 * Takes       which colour each pixel shows, and which colour is the ground.
 * Gives       a length in pixels; null when nothing is printed on the ground.
 */
export function shapeSize(labels: Labels, ground: number): number | null {
  const { width, height, of } = labels;
  const narrowest = narrowestRoom(of.length).fill(Infinity);
  for (const [dx, dy] of RUNS) {
    const step = dy * width + dx;
    const unit = Math.hypot(dx, dy);
    for (let first = 0, y = 0; y < height; y++)
      for (let x = 0; x < width; x++, first++) {
        const label = of[first]!;
        if (label === ground) continue;
        // A run begins where the pixel before is another's, or outside.
        const begins = y < dy || (dx > 0 ? x === 0 : dx < 0 && x === width - 1);
        if (!begins && of[first - step] === label) continue;
        const across = dx > 0 ? width - x : dx < 0 ? x + 1 : height;
        const room = dy === 0 ? across : Math.min(across, height - y);
        let count = 1;
        let end = first + step;
        for (; count < room && of[end] === label; count++) end += step;
        const length = count * unit;
        for (let at = first; at !== end; at += step)
          if (length < narrowest[at]!) narrowest[at] = length;
      }
  }
  let [sum, pixels] = [0, 0];
  for (let at = 0; at < of.length; at++) {
    if (of[at] === ground) continue;
    sum += narrowest[at]!;
    pixels++;
  }
  return pixels === 0 ? null : (DOT * sum) / pixels;
}

const narrowestRoom = workRoom((length) => new Float32Array(length));

const RUNS = [
  [1, 0],
  [0, 1],
  [1, 1],
  [-1, 1],
] as const;
/** Diameter of a disc over the mean of the narrowest of its four runs, by a fine raster of one disc. */
const DOT = 1.444;
