import type { Labels } from '../colour/label-pixels.ts';

/**
 * How much goes on in a print: much outline and many colours.
 *
 * Takes       which colour each pixel shows, the shares of the colours, and the size of a pixel in mm.
 * Gives       0 for plain paper, towards 1 for a dense many-coloured print; more outline or evener
 *             colours never give less. Our own measure: no published scale is claimed.
 */
export function busynessOf(
  { width, height, of }: Labels,
  shares: readonly number[],
  millimetresPerPixel: number,
): number {
  let steps = 0;
  for (let y = 0, at = 0; y < height; y++) {
    for (const end = at + width - 1; at < end; at++) if (of[at] !== of[at + 1]) steps++;
    at++;
  }
  for (let at = width; at < of.length; at++) if (of[at] !== of[at - width]) steps++;
  const outline = steps / (width * height) / millimetresPerPixel;
  const colours = 1 / shares.reduce((sum, share) => sum + share * share, 0);
  return 1 - Math.exp(-(outline / HALF_BUSY) * (0.5 + colours / 6));
}

/** Millimetres of outline on a square millimetre of a lively print, by eye. */
const HALF_BUSY = 0.45;
