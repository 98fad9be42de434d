/** Small swatches drawn for tests: a function paints each point, the edges are smoothed, noise is added. */
import type { Lab, LabImage } from '../../server/colour/lab.ts';

/** Numbers in [0, 1), the same for the same seed (mulberry32). */
export function chanceOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A normal deviate, mean 0 and deviation 1 (Box and Muller). */
export function normal(chance: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
}

export interface Drawing {
  readonly size?: number;
  /** Deviation of the noise of one pixel in each of l, a and b. */
  readonly noise?: number;
  readonly seed?: number;
}

/** Paints `paint(x, y)`, x and y in [0, 1), with nine samples a pixel. */
export function drawn(
  paint: (x: number, y: number) => Lab,
  { size = 180, noise = 0, seed = 1 }: Drawing = {},
): LabImage {
  const lab = new Float32Array(3 * size * size);
  const chance = chanceOf(seed);
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++) {
      const at = 3 * (y * size + x);
      for (let sample = 0; sample < 9; sample++) {
        const { l, a, b } = paint(
          (x + ((sample % 3) + 0.5) / 3) / size,
          (y + (((sample / 3) | 0) + 0.5) / 3) / size,
        );
        lab[at]! += l / 9;
        lab[at + 1]! += a / 9;
        lab[at + 2]! += b / 9;
      }
      if (noise > 0) for (let axis = 0; axis < 3; axis++) lab[at + axis]! += noise * normal(chance);
    }
  return { width: size, height: size, lab };
}

/** The picture turned clockwise by a quarter, `quarters` times. */
export function turned(image: LabImage, quarters: number): LabImage {
  let now = image;
  for (let turn = 0; turn < quarters; turn++) {
    const { width, height, lab } = now;
    const next = new Float32Array(lab.length);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        const to = 3 * (x * height + (height - 1 - y));
        const from = 3 * (y * width + x);
        next[to] = lab[from]!;
        next[to + 1] = lab[from + 1]!;
        next[to + 2] = lab[from + 2]!;
      }
    now = { width: height, height: width, lab: next };
  }
  return now;
}
