import type { Lab } from './lab.ts';

/**
 * How much of each colour a pixel shows, by its lightness: between its own colour and the one that its neighbours show most
 * besides. Where those two hardly differ in lightness, it shows its own alone.
 *
 * Takes       which colour each pixel shows, the width of the picture, its CIELAB values, and the colours.
 * Gives       what adds to `shown` how much a pixel, which may not lie at the rim, shows of each colour: to as many numbers
 *             from `first` on as there are colours, once for each of `weights` and weighed by it.
 */
export function partsOf(
  of: Uint8Array,
  width: number,
  lab: Float32Array,
  colours: readonly Lab[],
): (pixel: number, weights: Float64Array, shown: Float64Array, first: number) => void {
  const around = Int32Array.of(-width - 1, -width, 1 - width, -1, 1, width - 1, width, width + 1);
  const counts = new Uint8Array(colours.length);
  const lightness = Float64Array.from(colours, ({ l }) => l);
  return (pixel, weights, shown, first) => {
    const own = of[pixel]!;
    let other = own;
    for (let at = 0; at < 8; at++) {
      const beside = of[pixel + around[at]!]!;
      if (beside === own) continue;
      if (other === own) counts.fill(0);
      const count = ++counts[beside]!;
      if (other === own || count > counts[other]!) other = beside;
    }
    const step = lightness[own]! - lightness[other]!;
    const part = Math.abs(step) < TOLD ? 1 : (lab[3 * pixel]! - lightness[other]!) / step;
    const kept = part < 0 ? 0 : part > 1 ? 1 : part;
    for (let at = 0, to = first; at < weights.length; at++, to += lightness.length) {
      shown[to + own]! += weights[at]! * kept;
      shown[to + other]! += weights[at]! * (1 - kept);
    }
  };
}

/** Lightness by which a stroke must differ from what lies beside it to tell how much of it a pixel shows. */
const TOLD = 12;

/**
 * Those of the colours that differ so much in lightness from the one that lies beside them most often.
 *
 * Takes       which colour each pixel shows, the width of the picture, the colours, and the indices of those asked about.
 */
export function toldFrom(
  of: Uint8Array,
  width: number,
  colours: readonly Lab[],
  asked: readonly number[],
): number[] {
  if (asked.length === 0) return [];
  const size = colours.length;
  const beside = new Uint32Array(size * size);
  for (let row = width; row < of.length - width; row += EVERY * width)
    for (let pixel = row, end = row + width - 1; pixel < end; pixel++) {
      const own = of[pixel]!;
      const next = of[pixel + 1]!;
      const below = of[pixel + width]!;
      if (next !== own) {
        beside[size * own + next]!++;
        beside[size * next + own]!++;
      }
      if (below !== own) {
        beside[size * own + below]!++;
        beside[size * below + own]!++;
      }
    }
  return asked.filter((colour) => {
    const own = beside.subarray(size * colour, size * (colour + 1));
    const most = Math.max(...own);
    return most > 0 && Math.abs(colours[colour]!.l - colours[own.indexOf(most)]!.l) >= TOLD;
  });
}

/** Every such row tells what lies beside what. */
const EVERY = 2;
