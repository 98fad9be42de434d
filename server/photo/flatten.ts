import { LIGHT_STEPS, byteOfLight, encodedByte, linearOfByte } from '../colour/curves.ts';
import type { LabImage } from '../colour/lab.ts';
import { labOfLinear, linearInSrgb } from '../colour/spaces.ts';
import type { Primaries } from '../colour/spaces.ts';
import { gainsOfRow } from './correction.ts';
import type { Gains } from './correction.ts';
import type { RgbImage } from './picture.ts';
import type { Straightened } from './straighten.ts';

/** Turns light in the named primaries, in place, into linear sRGB as another photo would have shown it. */
export type LightTie = (light: Float32Array, primaries: Primaries) => void;

/**
 * For reading: CIELAB, nothing clipped, the light evened.
 *
 * Takes       the sheet laid flat, its gains, what ties its colours to another photo's (null when nothing does), how
 *             many of its pixels a side make one pixel for reading (1 or 2), and how many are left out at the rim.
 */
export function readingOf(
  { width, height, rgb, primaries }: Straightened,
  gains: Gains,
  tie: LightTie | null,
  by: 1 | 2,
  rim: number,
): LabImage {
  const size = {
    width: Math.floor((width - 2 * rim) / by),
    height: Math.floor((height - 2 * rim) / by),
  };
  const lab = new Float32Array(3 * size.width * size.height);
  const light = new Float32Array(3 * size.width);
  const gain = new Float32Array(3 * Math.ceil(size.width / TILE));
  const row = 3 * width;
  // Steps to the three other pixels of a block; all the same pixel when there is but one.
  const [across, down] = by === 2 ? [3, row] : [0, 0];
  for (let y = 0; y < size.height; y++) {
    const middle = by * TILE * 0.5;
    if (y % TILE === 0) gainsOfRow(gains, rim + by * y + middle, rim + middle, by * TILE, gain);
    let from = (rim + by * y) * row + 3 * rim;
    for (let tile = 0, at = 0; at < light.length; tile += 3) {
      const [r, g, b] = [gain[tile]!, gain[tile + 1]!, gain[tile + 2]!];
      for (const end = Math.min(light.length, at + 3 * TILE); at < end; at += 3, from += 3 * by) {
        const beside = from + across;
        const below = from + down;
        const other = beside + down;
        light[at] = r * linearOfQuarter[rgb[from]! + rgb[beside]! + rgb[below]! + rgb[other]!]!;
        light[at + 1] =
          g *
          linearOfQuarter[rgb[from + 1]! + rgb[beside + 1]! + rgb[below + 1]! + rgb[other + 1]!]!;
        light[at + 2] =
          b *
          linearOfQuarter[rgb[from + 2]! + rgb[beside + 2]! + rgb[below + 2]! + rgb[other + 2]!]!;
      }
    }
    tie?.(light, primaries);
    labOfLinear(
      light,
      tie === null ? primaries : 'srgb',
      lab.subarray(y * light.length, (y + 1) * light.length),
    );
  }
  return { ...size, lab };
}

/** Pixels a side of the tiles over which the gain counts as the same: light moves by some 0.1 % within one. */
const TILE = 16;

/**
 * Linear light of a quarter of a byte. The mean of four bytes is taken as it is encoded, not as light: so a pixel on
 * the border of two colours lies about as far between them in CIELAB as the border cuts it.
 */
const linearOfQuarter = Float32Array.from({ length: 4 * 255 + 1 }, (_, quarter) => {
  const byte = quarter >> 2;
  const low = linearOfByte[byte]!;
  return low + ((quarter & 3) / 4) * ((linearOfByte[byte + 1] ?? low) - low);
});

/** For showing: sRGB; what it cannot show is greyed just as far as needed, so that hues stay. */
export function pictureOf(flat: Straightened, gains: Gains, tie: LightTie | null): RgbImage {
  const { width, height, rgb, primaries } = flat;
  const shown = new Uint8Array(rgb.length);
  if (tie === null && primaries === 'srgb') {
    showBytes(flat, gains, shown);
    return { width, height, rgb: shown };
  }
  const light = new Float32Array(3 * width);
  const gain = new Float32Array(3 * Math.ceil(width / TILE));
  for (let y = 0, first = 0; y < height; y++, first += light.length) {
    if (y % TILE === 0) gainsOfRow(gains, y + TILE / 2, TILE / 2, TILE, gain);
    for (let tile = 0, at = 0; at < light.length; tile += 3) {
      const [r, g, b] = [gain[tile]!, gain[tile + 1]!, gain[tile + 2]!];
      for (const end = Math.min(light.length, at + 3 * TILE); at < end; at += 3) {
        light[at] = r * linearOfByte[rgb[first + at]!]!;
        light[at + 1] = g * linearOfByte[rgb[first + at + 1]!]!;
        light[at + 2] = b * linearOfByte[rgb[first + at + 2]!]!;
      }
    }
    if (tie !== null) tie(light, primaries);
    else linearInSrgb(light, primaries);
    encodeRow(light, shown, first);
  }
  return { width, height, rgb: shown };
}

/** The same where light is only multiplied: a byte shown follows from a byte and its gain, and is looked up. */
function showBytes({ width, height, rgb }: Straightened, gains: Gains, shown: Uint8Array): void {
  const row = 3 * width;
  const gain = new Float32Array(3 * Math.ceil(width / TILE));
  const beyond = new Float32Array(3);
  const bytes: Multiplied[] = [];
  for (let y = 0; y < height; y++) {
    if (y % TILE === 0) {
      gainsOfRow(gains, y + TILE / 2, TILE / 2, TILE, gain);
      for (let at = 0; at < gain.length; at++) bytes[at] = multiplied(gain[at]!);
    }
    for (let tile = 0, at = row * y; tile < bytes.length; tile += 3) {
      const r = bytes[tile]!;
      const g = bytes[tile + 1]!;
      const b = bytes[tile + 2]!;
      const [ofR, ofG, ofB] = [r.shown, g.shown, b.shown];
      for (const end = Math.min(row * (y + 1), at + 3 * TILE); at < end; at += 3) {
        const outR = ofR[rgb[at]!]!;
        const outG = ofG[rgb[at + 1]!]!;
        const outB = ofB[rgb[at + 2]!]!;
        if ((outR | outG | outB) < TOO_LIGHT) {
          shown[at] = outR;
          shown[at + 1] = outG;
          shown[at + 2] = outB;
        } else {
          beyond[0] = r.gain * linearOfByte[rgb[at]!]!;
          beyond[1] = g.gain * linearOfByte[rgb[at + 1]!]!;
          beyond[2] = b.gain * linearOfByte[rgb[at + 2]!]!;
          encodeRow(beyond, shown, at);
        }
      }
    }
  }
}

/** What the light of each byte is shown as once it is multiplied; TOO_LIGHT when it is too light to be shown. */
interface Multiplied {
  readonly gain: number;
  readonly shown: Uint16Array;
}

/** A bit that no byte has, so that one look tells of three channels together. */
const TOO_LIGHT = 256;

/** Gains nearer to each other than this part share a table: that moves what is shown by less than a quarter of a byte. */
const GAIN_STEP = 0.004;
const tables = new Map<number, Multiplied>();

function multiplied(wanted: number): Multiplied {
  const step = Math.round(Math.log(wanted) / GAIN_STEP);
  const known = tables.get(step);
  if (known !== undefined) return known;
  const gain = Math.exp(step * GAIN_STEP);
  const shown = new Uint16Array(linearOfByte.length);
  for (let byte = 0; byte < shown.length; byte++) {
    const light = gain * linearOfByte[byte]!;
    shown[byte] = light > 1 ? TOO_LIGHT : encodedByte(light);
  }
  const table = { gain, shown };
  tables.set(step, table);
  return table;
}

function encodeRow(light: Float32Array, shown: Uint8Array, first: number): void {
  for (let at = 0, to = first; at < light.length; at += 3, to += 3) {
    const r = light[at]!;
    const g = light[at + 1]!;
    const b = light[at + 2]!;
    if (r >= 0 && g >= 0 && b >= 0 && r <= 1 && g <= 1 && b <= 1) {
      shown[to] = byteOfLight[(r * LIGHT_STEPS + 0.5) | 0]!;
      shown[to + 1] = byteOfLight[(g * LIGHT_STEPS + 0.5) | 0]!;
      shown[to + 2] = byteOfLight[(b * LIGHT_STEPS + 0.5) | 0]!;
    } else {
      const y = Math.max(0, Math.min(1, 0.2126 * r + 0.7152 * g + 0.0722 * b));
      const keep = keptOfHue(Math.min(r, g, b), Math.max(r, g, b), y);
      shown[to] = encodedByte(y + keep * (r - y));
      shown[to + 1] = encodedByte(y + keep * (g - y));
      shown[to + 2] = encodedByte(y + keep * (b - y));
    }
  }
}

/** How far from gray of its own luminance `y` a colour may go before a channel leaves [0, 1]. */
function keptOfHue(least: number, most: number, y: number): number {
  return Math.min(
    1,
    least < 0 ? y / Math.max(1e-9, y - least) : 1,
    most > 1 ? (1 - y) / Math.max(1e-9, most - y) : 1,
  );
}
