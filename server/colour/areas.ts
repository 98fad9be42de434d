import type { Labels } from './label-pixels.ts';
import type { Lab, LabImage } from './lab.ts';

/**
 * How much of the picture each colour fills, in pixels.
 *
 * A mixed pixel on the border of two shapes is divided between them by where its colour lies on the
 * line from one to the other, so that thin strokes neither gain nor lose.
 *
 * Takes       the picture, its colours, which colour each pixel shows, and which pixels are flat.
 * Gives       one area a colour; they add up to the number of pixels.
 */
export function areasOf(
  { width, height, lab }: LabImage,
  colours: readonly Lab[],
  { of }: Labels,
  flat: Uint8Array,
): Float64Array {
  const areas = new Float64Array(colours.length);
  for (let y = 0, pixel = 0; y < height; y++)
    for (let x = 0; x < width; x++, pixel++) {
      const own = of[pixel]!;
      let other = own;
      let part = 0;
      if (flat[pixel] === 0 || off(lab, 3 * pixel, colours[own]!) > PURE) {
        let least = Infinity;
        for (let v = Math.max(0, y - 1); v <= Math.min(height - 1, y + 1); v++)
          for (let u = Math.max(0, x - 1); u <= Math.min(width - 1, x + 1); u++) {
            const beside = of[v * width + u]!;
            if (beside === own || beside === other) continue;
            const mix = mixture(lab, 3 * pixel, colours[own]!, colours[beside]!);
            if (mix.off >= least) continue;
            least = mix.off;
            other = beside;
            part = mix.part;
          }
      }
      areas[own]! += 1 - part;
      areas[other]! += part;
    }
  return areas;
}

/** A pixel nearer than this to its colour is that colour: squared CIELAB units. */
const PURE = 8 ** 2;

function off(lab: Float32Array, at: number, { l, a, b }: Lab): number {
  return (lab[at]! - l) ** 2 + (lab[at + 1]! - a) ** 2 + (lab[at + 2]! - b) ** 2;
}

/** How far a pixel lies on the way from one colour to another, and its squared distance off that line. */
function mixture(
  lab: Float32Array,
  at: number,
  from: Lab,
  to: Lab,
): { readonly part: number; readonly off: number } {
  const [dl, da, db] = [to.l - from.l, to.a - from.a, to.b - from.b];
  const [l, a, b] = [lab[at]! - from.l, lab[at + 1]! - from.a, lab[at + 2]! - from.b];
  const part = Math.min(1, Math.max(0, (l * dl + a * da + b * db) / (dl * dl + da * da + db * db)));
  return { part, off: (l - part * dl) ** 2 + (a - part * da) ** 2 + (b - part * db) ** 2 };
}
