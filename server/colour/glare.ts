import { difference } from './difference.ts';
import type { Lab, LabImage } from './lab.ts';
import { labFromLinear, linearFromLab } from './spaces.ts';
import type { LinearRgb } from './spaces.ts';

/**
 * How much of a solid shines: the part of its pixels in which the light mirrors.
 *
 * Where a surface mirrors, its light is the colour's own and some of the lamp's on top, in linear light, so that
 * it grows bright and pale. Thin ink grows bright as well, but otherwise: the card behind it is seen through
 * less ink, which takes the light away channel by channel (Beer and Lambert).
 *
 *     dark ink ●─────── mirrored light: straight to white ──────●  brighter than the card
 *               ╲____ thin ink: stays strong, then card ____●
 *
 * Takes       a flat picture, the pixels that may belong to the solid, its colour, the card around a smear (null
 *             for cardstock, on which nothing lies thin), and the noise of a pixel in CIELAB units.
 * Gives       a part of those pixels, in [0, 1].
 * Good up to  glints and broad sheen of white light. A grey ink thins as straight to white as it shines: there
 *             only what is brighter than the card counts. A sheen that lies evenly over all is not seen.
 * Source      the dichromatic reflection of Shafer (1985), Color Res. Appl. 10(4), 210-218,
 *             doi:10.1002/col.5080100409; thin ink by Beer's law. The limits are judgements, held to on the
 *             smears of the rendered sample photos.
 */
export function glareOf(
  { lab }: LabImage,
  pixels: Int32Array,
  colour: Lab,
  card: Lab | null,
  noise: number,
): number {
  const own = linearFromLab(colour);
  const white = card === null ? WHITE : linearFromLab(card);
  const brighter = colour.l + BRIGHTER + 3 * noise;
  const beyond = card === null ? Infinity : card.l + BEYOND + 2 * noise;
  let shining = 0;
  for (const pixel of pixels) {
    const seen: Lab = { l: lab[3 * pixel]!, a: lab[3 * pixel + 1]!, b: lab[3 * pixel + 2]! };
    if (seen.l < brighter) continue;
    if (seen.l > beyond || isMirrored(seen, own, white, card !== null)) shining += 1;
  }
  return pixels.length === 0 ? 0 : shining / pixels.length;
}

/** So much lighter than the solid, in steps of L, is a pixel that may shine. */
const BRIGHTER = 8;
/** So much lighter than the white card is no card, but a lamp. */
const BEYOND = 2.5;
/** How near, in CIEDE2000, a shining pixel is to mirrored light, and how much nearer than to thin ink. */
const LIKE = 5;
const NEARER = 0.5;

const WHITE: LinearRgb = { r: 0.9, g: 0.9, b: 0.9 };
const CHANNELS = ['r', 'g', 'b'] as const;

function isMirrored(seen: Lab, own: LinearRgb, white: LinearRgb, mayBeThin: boolean): boolean {
  const light = linearFromLab(seen);
  const off = difference(seen, labFromLinear(mirrored(light, own, white)));
  if (off > LIKE) return false;
  return !mayBeThin || off < NEARER * difference(seen, labFromLinear(thin(light, own, white)));
}

/** The colour with so much of the lamp on it as comes nearest. */
function mirrored(light: LinearRgb, own: LinearRgb, white: LinearRgb): LinearRgb {
  const part = along(CHANNELS.map((c) => [light[c] - own[c], white[c]]));
  return inEach((c) => own[c] + Math.max(0, part) * white[c]);
}

/** The card under so little of the ink as comes nearest; 1 is the ink as it is, 0 the bare card. */
function thin(light: LinearRgb, own: LinearRgb, white: LinearRgb): LinearRgb {
  const through = (c: keyof LinearRgb, of: LinearRgb): number =>
    Math.log(Math.max(1e-3, of[c]) / white[c]);
  const thick = along(CHANNELS.map((c) => [through(c, light), through(c, own)]));
  const at = Math.min(1.5, Math.max(0, thick));
  return inEach((c) => white[c] * Math.exp(at * through(c, own)));
}

/** The multiple of the second of each pair that is nearest to the first, by least squares. */
function along(pairs: readonly (readonly number[])[]): number {
  const dot = pairs.reduce((sum, [p, q]) => sum + p! * q!, 0);
  const whole = pairs.reduce((sum, [, q]) => sum + q! * q!, 0);
  return whole < 1e-12 ? 0 : dot / whole;
}

function inEach(of: (channel: keyof LinearRgb) => number): LinearRgb {
  return { r: of('r'), g: of('g'), b: of('b') };
}
