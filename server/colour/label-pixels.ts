import type { Lab, LabImage } from './lab.ts';

/** Which palette colour each pixel shows: its index, one byte a pixel. */
export interface Labels {
  readonly width: number;
  readonly height: number;
  readonly of: Uint8Array;
}

/**
 * Gives every pixel to a colour of the palette. A flat pixel goes to the nearest colour; a mixed one on
 * the soft border between two shapes to one of the colours beside it, never to a third colour that only
 * happens to lie between the two.
 *
 * Takes       the picture, its colours (1 to 255), and which pixels are flat.
 */
export function labelPixels(
  { width, height, lab }: LabImage,
  colours: readonly Lab[],
  flat: Uint8Array,
): Labels {
  const of = new Uint8Array(width * height).fill(NONE);
  const centre = Float32Array.from(colours.flatMap(({ l, a, b }) => [l, a, b]));
  const queue = new Int32Array(width * height);
  let filled = 0;
  for (let pixel = 0; pixel < of.length; pixel++)
    if (flat[pixel] === 1) {
      of[pixel] = nearest(lab, 3 * pixel, centre);
      queue[filled++] = pixel;
    }
  if (filled === 0) {
    for (let pixel = 0; pixel < of.length; pixel++) of[pixel] = nearest(lab, 3 * pixel, centre);
    return { width, height, of };
  }
  for (let at = 0; at < filled; at++) {
    const pixel = queue[at]!;
    const x = pixel % width;
    for (let way = 0; way < 4; way++) {
      const dx = way === 0 ? -1 : way === 1 ? 1 : 0;
      const beside = pixel + dx + (way === 2 ? -width : way === 3 ? width : 0);
      if (x + dx < 0 || x + dx >= width || beside < 0 || beside >= of.length) continue;
      if (of[beside] !== NONE) continue;
      of[beside] = likeliest(lab, of, beside, width, centre);
      queue[filled++] = beside;
    }
  }
  return { width, height, of };
}

/** The colour among those that a pixel's eight neighbours show already that is nearest to its own. */
function likeliest(
  lab: Float32Array,
  of: Uint8Array,
  pixel: number,
  width: number,
  centre: Float32Array,
): number {
  const x = pixel % width;
  let best = NONE;
  let least = Infinity;
  for (let dy = -width; dy <= width; dy += width)
    for (let dx = -1; dx <= 1; dx++) {
      const beside = pixel + dy + dx;
      if (x + dx < 0 || x + dx >= width || beside < 0 || beside >= of.length) continue;
      const label = of[beside]!;
      if (label === NONE || label === best) continue;
      const apart = squared(lab, 3 * pixel, centre, 3 * label);
      if (apart < least) {
        least = apart;
        best = label;
      }
    }
  return best;
}

const NONE = 255;

function nearest(lab: Float32Array, at: number, centre: Float32Array): number {
  let best = 0;
  let least = Infinity;
  for (let c = 0, p = 0; p < centre.length; c++, p += 3) {
    const apart = squared(lab, at, centre, p);
    if (apart < least) {
      least = apart;
      best = c;
    }
  }
  return best;
}

function squared(lab: Float32Array, at: number, centre: Float32Array, p: number): number {
  const l = lab[at]! - centre[p]!;
  const a = lab[at + 1]! - centre[p + 1]!;
  const b = lab[at + 2]! - centre[p + 2]!;
  return l * l + a * a + b * b;
}
