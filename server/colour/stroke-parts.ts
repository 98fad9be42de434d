import type { Lab } from './lab.ts';
import { workRoom } from './work-room.ts';

/** Adds to `shown`, `by` times, how much of each colour a pixel shows. */
export type AddParts = (pixel: number, by: number, shown: Float64Array) => void;

/**
 * How much of each colour a pixel shows, by its lightness: between its own colour and the one that its neighbours show most
 * besides. Where those two hardly differ in lightness, it shows its own alone.
 *
 * Takes       which colour each pixel shows, the width of the picture, its CIELAB values, and the colours. Not to be asked
 *             of pixels at the rim. Good until it is made for the next picture.
 */
export function partsOf(
  of: Uint8Array,
  width: number,
  lab: Float32Array,
  colours: readonly Lab[],
): AddParts {
  // The colour beside, one more than its index; 0 while nobody has asked.
  const beside = besideRoom(of.length).fill(0);
  const own = ownRoom(of.length);
  const around = [-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1];
  const counts = new Uint8Array(colours.length);
  const tell = (pixel: number): void => {
    const label = of[pixel]!;
    let most = label;
    counts.fill(0);
    for (const step of around) {
      const other = of[pixel + step]!;
      if (other !== label && ++counts[other]! > (most === label ? 0 : counts[most]!)) most = other;
    }
    const step = colours[label]!.l - colours[most]!.l;
    const part = Math.abs(step) < TOLD ? 1 : (lab[3 * pixel]! - colours[most]!.l) / step;
    beside[pixel] = most + 1;
    own[pixel] = Math.max(0, Math.min(1, part));
  };
  return (pixel, by, shown) => {
    if (beside[pixel] === 0) tell(pixel);
    const part = by * own[pixel]!;
    shown[of[pixel]!]! += part;
    shown[beside[pixel]! - 1]! += by - part;
  };
}

/** Lightness by which a stroke must differ from what lies beside it to tell how much of it a pixel shows. */
const TOLD = 12;

/** Whether a colour differs so much in lightness from the one that lies beside it most often. */
export function isToldFrom(
  of: Uint8Array,
  width: number,
  colours: readonly Lab[],
  meant: number,
): boolean {
  const beside = new Uint32Array(colours.length);
  for (let pixel = width; pixel < of.length - width; pixel++)
    if (of[pixel] === meant)
      for (const next of [pixel - 1, pixel + 1, pixel - width, pixel + width])
        if (of[next] !== meant) beside[of[next]!]!++;
  const most = Math.max(...beside);
  return most > 0 && Math.abs(colours[meant]!.l - colours[beside.indexOf(most)]!.l) >= TOLD;
}

const besideRoom = workRoom((length) => new Uint8Array(length));
const ownRoom = workRoom((length) => new Float32Array(length));
