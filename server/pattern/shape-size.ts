import type { Labels } from '../colour/label-pixels.ts';

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
  const narrowest = new Float32Array(of.length).fill(Infinity);
  for (const [dx, dy] of RUNS) {
    const step = dy * width + dx;
    const unit = Math.hypot(dx, dy);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        const first = y * width + x;
        const label = of[first]!;
        if (label === ground || same(labels, x - dx, y - dy, label)) continue;
        let count = 1;
        while (same(labels, x + count * dx, y + count * dy, label)) count++;
        for (let i = 0, at = first; i < count; i++, at += step)
          narrowest[at] = Math.min(narrowest[at]!, count * unit);
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

const RUNS = [
  [1, 0],
  [0, 1],
  [1, 1],
  [-1, 1],
] as const;
/** Diameter of a disc over the mean of the narrowest of its four runs, by a fine raster of one disc. */
const DOT = 1.444;

function same({ width, height, of }: Labels, x: number, y: number, label: number): boolean {
  return x >= 0 && x < width && y >= 0 && y < height && of[y * width + x] === label;
}
