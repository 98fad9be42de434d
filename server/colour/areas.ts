import type { Labels } from './label-pixels.ts';
import type { Lab, LabImage } from './lab.ts';

/**
 * How much of the picture each colour fills, in pixels.
 *
 * A mixed pixel on the border of two shapes is divided between them by where its colour lies on the
 * line from one to the other, so that thin strokes neither gain nor lose.
 *
 * Takes       the picture, its colours, which colour each pixel shows, which pixels are flat, and which lie inside
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
  const areas = new Float64Array(colours.length);
  const centre = Float64Array.from(colours.flatMap(({ l, a, b }) => [l, a, b]));
  for (let y = 0, pixel = 0; y < height; y++) {
    const top = y > 0 ? -width : 0;
    const bottom = y < height - 1 ? width : 0;
    for (let x = 0; x < width; x++, pixel++) {
      const own = of[pixel]!;
      if (
        inside[pixel] === 1 ||
        (flat[pixel] === 1 && off(lab, 3 * pixel, centre, 3 * own) <= PURE)
      ) {
        areas[own]! += 1;
        continue;
      }
      let other = own;
      let part = 0;
      let least = Infinity;
      const left = x > 0 ? -1 : 0;
      const right = x < width - 1 ? 1 : 0;
      for (let row = top; row <= bottom; row += width)
        for (let step = left; step <= right; step++) {
          const beside = of[pixel + row + step]!;
          if (beside === own || beside === other) continue;
          const along = partAlong(lab, 3 * pixel, centre, 3 * own, 3 * beside);
          const apart = offLine(lab, 3 * pixel, centre, 3 * own, 3 * beside, along);
          if (apart >= least) continue;
          least = apart;
          other = beside;
          part = along;
        }
      areas[own]! += 1 - part;
      areas[other]! += part;
    }
  }
  return areas;
}

/** A pixel nearer than this to its colour is that colour: squared CIELAB units. */
const PURE = 8 ** 2;

function off(lab: Float32Array, at: number, centre: Float64Array, c: number): number {
  const l = lab[at]! - centre[c]!;
  const a = lab[at + 1]! - centre[c + 1]!;
  const b = lab[at + 2]! - centre[c + 2]!;
  return l * l + a * a + b * b;
}

/** How far a pixel lies on the way from one colour to another, in [0, 1]. */
function partAlong(
  lab: Float32Array,
  at: number,
  centre: Float64Array,
  from: number,
  to: number,
): number {
  const dl = centre[to]! - centre[from]!;
  const da = centre[to + 1]! - centre[from + 1]!;
  const db = centre[to + 2]! - centre[from + 2]!;
  const l = lab[at]! - centre[from]!;
  const a = lab[at + 1]! - centre[from + 1]!;
  const b = lab[at + 2]! - centre[from + 2]!;
  const part = (l * dl + a * da + b * db) / (dl * dl + da * da + db * db);
  return part < 0 ? 0 : part > 1 ? 1 : part;
}

/** The squared distance of a pixel from the place that lies `part` of the way from one colour to another. */
function offLine(
  lab: Float32Array,
  at: number,
  centre: Float64Array,
  from: number,
  to: number,
  part: number,
): number {
  let sum = 0;
  for (let axis = 0; axis < 3; axis++) {
    const start = centre[from + axis]!;
    const here = start + part * (centre[to + axis]! - start);
    sum += (lab[at + axis]! - here) ** 2;
  }
  return sum;
}
