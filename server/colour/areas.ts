import type { Labels } from './label-pixels.ts';
import type { Lab, LabImage } from './lab.ts';

/**
 * How much of the picture each colour fills, in pixels.
 *
 * A mixed pixel on the border of two shapes is divided between them by where its colour lies on the
 * line from one to the other, so that thin strokes neither gain nor lose.
 *
 * Takes       the picture, its colours (1 to 31), which colour each pixel shows, which pixels are flat, and which lie inside
 *             shapes.
 * Gives       one area a colour; they add up to the number of pixels.
 */
export function areasOf(
  { width, height, lab }: LabImage,
  colours: readonly Lab[],
  { of }: Labels,
  flat: Uint8Array,
  inside: Uint8Array,
): Float64Array {
  const size = colours.length;
  const areas = new Float64Array(size);
  const centre = Float64Array.from(colours.flatMap(({ l, a, b }) => [l, a, b]));
  const ways = waysBetween(centre);
  for (let y = 0, pixel = 0; y < height; y++) {
    const top = y > 0 ? -width : 0;
    const bottom = y < height - 1 ? width : 0;
    for (let x = 0; x < width; x++, pixel++) {
      const own = of[pixel]!;
      if (inside[pixel] === 1) {
        areas[own]! += 1;
        continue;
      }
      const l = lab[3 * pixel]! - centre[3 * own]!;
      const a = lab[3 * pixel + 1]! - centre[3 * own + 1]!;
      const b = lab[3 * pixel + 2]! - centre[3 * own + 2]!;
      const off = l * l + a * a + b * b;
      if (flat[pixel] === 1 && off <= PURE) {
        areas[own]! += 1;
        continue;
      }
      let other = own;
      let part = 0;
      let least = Infinity;
      let seen = 1 << own;
      const left = x > 0 ? -1 : 0;
      const right = x < width - 1 ? 1 : 0;
      for (let row = top; row <= bottom; row += width)
        for (let at = pixel + row + left, end = pixel + row + right; at <= end; at++) {
          const beside = of[at]!;
          if ((seen & (1 << beside)) !== 0) continue;
          seen |= 1 << beside;
          // How far the pixel lies on the way to that colour, in [0, 1], and its squared distance from that place.
          const way = 4 * (size * own + beside);
          const along = l * ways[way]! + a * ways[way + 1]! + b * ways[way + 2]!;
          const whole = ways[way + 3]!;
          const to = along <= 0 ? 0 : along >= whole ? 1 : along / whole;
          const apart = off + to * (to * whole - 2 * along);
          if (apart >= least) continue;
          least = apart;
          other = beside;
          part = to;
        }
      areas[own]! += 1 - part;
      areas[other]! += part;
    }
  }
  return areas;
}

/** A pixel nearer than this to its colour is that colour: squared CIELAB units. */
const PURE = 8 ** 2;

/** From each colour to each other: the steps in l, a and b, and their squared length; four numbers a pair. */
function waysBetween(centre: Float64Array): Float64Array {
  const ways: number[] = [];
  for (let from = 0; from < centre.length; from += 3)
    for (let to = 0; to < centre.length; to += 3) {
      const step = [0, 1, 2].map((axis) => centre[to + axis]! - centre[from + axis]!);
      ways.push(
        ...step,
        step.reduce((sum, value) => sum + value * value, 0),
      );
    }
  return Float64Array.from(ways);
}
