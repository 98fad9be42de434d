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
 * Takes       the picture, its colours (1 to 31), and which pixels are flat.
 */
export function labelPixels(
  { width, height, lab }: LabImage,
  colours: readonly Lab[],
  flat: Uint8Array,
): Labels {
  const centre = Float32Array.from(colours.flatMap(({ l, a, b }) => [l, a, b]));
  const sure = sureWithin(centre);
  // A frame of NOWHERE around the picture spares asking at each step whether it leads out of it.
  const stride = width + 2;
  const framed = new Uint8Array(stride * (height + 2)).fill(NOWHERE);
  const open = new Int32Array(width * height);
  const plain = !flat.includes(1);
  let left = 0;
  let label = 0;
  for (let y = 0, pixel = 0; y < height; y++)
    for (let x = 0, at = stride * (y + 1) + 1; x < width; x++, pixel++, at++) {
      if (!plain && flat[pixel] === 0) {
        framed[at] = NONE;
        open[left++] = at;
        continue;
      }
      // Neighbours mostly show the same colour, and one so near to it can be nearest to no other.
      if (squared(lab, 3 * pixel, centre, 3 * label) >= sure[label]!)
        label = nearest(lab, 3 * pixel, centre);
      framed[at] = label;
    }
  growInto(open.subarray(0, left), framed, stride, lab, centre);
  const of = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    const from = stride * (y + 1) + 1;
    of.set(framed.subarray(from, from + width), y * width);
  }
  return { width, height, of };
}

/**
 * Labels the open pixels ring by ring, from those that touch a labelled one inwards. Where two rings meet each
 * pixel then sees both sides and chooses once more.
 */
function growInto(
  open: Int32Array,
  framed: Uint8Array,
  stride: number,
  lab: Float32Array,
  centre: Float32Array,
): void {
  const waiting = open.slice();
  const ring = new Uint8Array(open.length);
  for (let left = open.length; left > 0;) {
    for (let i = 0; i < left; i++) ring[i] = likeliest(lab, framed, waiting[i]!, stride, centre);
    let still = 0;
    for (let i = 0; i < left; i++) {
      const at = waiting[i]!;
      if (ring[i] === NONE) waiting[still++] = at;
      else framed[at] = ring[i]!;
    }
    left = still;
  }
  for (const at of open) framed[at] = likeliest(lab, framed, at, stride, centre);
}

/** For each colour a squared distance within which no other colour is nearer: half the way to the next. */
function sureWithin(centre: Float32Array): Float32Array {
  const sure = new Float32Array(centre.length / 3).fill(Infinity);
  for (let p = 0; p < centre.length; p += 3)
    for (let q = 0; q < centre.length; q += 3)
      if (p !== q) sure[p / 3] = Math.min(sure[p / 3]!, squared(centre, p, centre, q) / 4);
  return sure;
}

/** The colour among those that a pixel's eight neighbours show already that is nearest to its own. */
function likeliest(
  lab: Float32Array,
  framed: Uint8Array,
  at: number,
  stride: number,
  centre: Float32Array,
): number {
  let shown = 0;
  for (let row = at - stride; row <= at + stride; row += stride)
    shown |= BIT[framed[row - 1]!]! | BIT[framed[row]!]! | BIT[framed[row + 1]!]!;
  if (shown === 0) return NONE;
  if ((shown & (shown - 1)) === 0) return 31 - Math.clz32(shown);
  const p = 3 * (at - stride - 1 - 2 * (((at / stride) | 0) - 1));
  let best = NONE;
  let least = Infinity;
  for (; shown !== 0; shown &= shown - 1) {
    const label = 31 - Math.clz32(shown & -shown);
    const apart = squared(lab, p, centre, 3 * label);
    if (apart >= least) continue;
    least = apart;
    best = label;
  }
  return best;
}

/** A bit for each colour, so that the colours around a pixel are a set in one number. */
const BIT = Int32Array.from({ length: 256 }, (_, label) => (label < 31 ? 1 << label : 0));

/** Not known yet; outside the picture. Both beyond any index of a colour. */
const NONE = 255;
const NOWHERE = 254;

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
