import type { Lab, LabImage } from './lab.ts';
import { NEAR, unmistakable } from './unmistakable.ts';
import { workRoom } from './work-room.ts';

/** Which palette colour each pixel shows: its index, one byte a pixel. */
export interface Labels {
  readonly width: number;
  readonly height: number;
  readonly of: Uint8Array;
}

/**
 * Gives every pixel to a colour of the palette. A flat pixel goes to the nearest colour; a mixed one on
 * the soft border between two shapes to one of the colours beside it, never to a third colour that only
 * happens to lie between the two. What looks like a colour to which no two others mix shows it anywhere.
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
  const clear = unmistakable(colours);
  // Each pixel holds the bit of its colour, 0 while it is not known, so that the colours around it are a set in one
  // number. An empty frame around the picture spares asking at each step whether it leads out of it.
  const stride = width + 2;
  const framed = framedRoom(stride * (height + 2));
  framed.fill(0, 0, stride).fill(0, stride * (height + 1));
  const open = openRoom(width * height);
  const plain = !flat.includes(1);
  let left = 0;
  // The colour of the last flat pixel, and how far it reaches alone.
  let bit = 1;
  let l = centre[0]!;
  let a = centre[1]!;
  let b = centre[2]!;
  let reach = sure[0]!;
  for (let y = 0, pixel = 0; y < height; y++) {
    let at = stride * (y + 1);
    framed[at++] = 0;
    for (const end = pixel + width; pixel < end; pixel++, at++) {
      if (!plain && flat[pixel] === 0) {
        const own = nearTo(lab, 3 * pixel, centre, clear);
        framed[at] = own;
        if (own === 0) open[left++] = at;
        continue;
      }
      // Neighbours mostly show the same colour, and one so near to it can be nearest to no other.
      const p = 3 * pixel;
      const offL = lab[p]! - l;
      const offA = lab[p + 1]! - a;
      const offB = lab[p + 2]! - b;
      if (offL * offL + offA * offA + offB * offB >= reach) {
        const label = nearest(lab, p, centre);
        bit = 1 << label;
        l = centre[3 * label]!;
        a = centre[3 * label + 1]!;
        b = centre[3 * label + 2]!;
        reach = sure[label]!;
      }
      framed[at] = bit;
    }
    framed[at] = 0;
  }
  growInto(open.subarray(0, left), framed, stride, lab, centre);
  const of = new Uint8Array(width * height);
  for (let y = 0, pixel = 0; y < height; y++)
    for (let at = stride * (y + 1) + 1, end = pixel + width; pixel < end; pixel++, at++)
      of[pixel] = 31 - Math.clz32(framed[at]!);
  return { width, height, of };
}

const framedRoom = workRoom((length) => new Int32Array(length));
const openRoom = workRoom((length) => new Int32Array(length));
const waitingRoom = workRoom((length) => new Int32Array(length));
const ringRoom = workRoom((length) => new Int32Array(length));
const seenRoom = workRoom((length) => new Int32Array(length));

/**
 * Labels the open pixels ring by ring, from those that touch a labelled one inwards. Where two rings meet each
 * pixel then sees both sides and chooses once more, if it sees other colours than before.
 *
 * Takes       where each open pixel lies in the frame.
 */
function growInto(
  open: Int32Array,
  framed: Int32Array,
  stride: number,
  lab: Float32Array,
  centre: Float32Array,
): void {
  const waiting = waitingRoom(open.length);
  for (let i = 0; i < waiting.length; i++) waiting[i] = i;
  const ring = ringRoom(open.length);
  const seen = seenRoom(open.length);
  for (let left = open.length; left > 0;) {
    for (let i = 0; i < left; i++) {
      const at = open[waiting[i]!]!;
      const shown = shownAround(framed, at, stride);
      seen[waiting[i]!] = shown;
      ring[i] = likeliest(lab, pixelOf(at, stride), shown, centre);
    }
    let still = 0;
    for (let i = 0; i < left; i++) {
      const which = waiting[i]!;
      if (ring[i] === 0) waiting[still++] = which;
      else framed[open[which]!] = ring[i]!;
    }
    left = still;
  }
  for (let i = 0; i < open.length; i++) {
    const at = open[i]!;
    const shown = shownAround(framed, at, stride);
    if (shown !== seen[i]) framed[at] = likeliest(lab, pixelOf(at, stride), shown, centre);
  }
}

function pixelOf(at: number, stride: number): number {
  return at - stride - 1 - 2 * (((at / stride) | 0) - 1);
}

/** The bit of the nearest of some colours that a pixel is near to; 0 when it is near to none. */
function nearTo(
  lab: Float32Array,
  at: number,
  centre: Float32Array,
  colours: readonly number[],
): number {
  let nearest = 0;
  let least = NEAR * NEAR;
  for (const colour of colours) {
    const away = squared(lab, at, centre, 3 * colour);
    if (away >= least) continue;
    least = away;
    nearest = 1 << colour;
  }
  return nearest;
}

/** For each colour a squared distance within which no other colour is nearer: half the way to the next. */
function sureWithin(centre: Float32Array): Float32Array {
  const sure = new Float32Array(centre.length / 3).fill(Infinity);
  for (let p = 0; p < centre.length; p += 3)
    for (let q = 0; q < centre.length; q += 3)
      if (p !== q) sure[p / 3] = Math.min(sure[p / 3]!, squared(centre, p, centre, q) / 4);
  return sure;
}

/** The bits of the colours that a pixel and its eight neighbours show. */
function shownAround(framed: Int32Array, at: number, stride: number): number {
  const above = at - stride;
  const below = at + stride;
  return (
    framed[above - 1]! |
    framed[above]! |
    framed[above + 1]! |
    framed[at - 1]! |
    framed[at]! |
    framed[at + 1]! |
    framed[below - 1]! |
    framed[below]! |
    framed[below + 1]!
  );
}

/** The bit of the colour that is nearest to a pixel's own among some; 0 of none. */
function likeliest(lab: Float32Array, pixel: number, among: number, centre: Float32Array): number {
  if ((among & (among - 1)) === 0) return among;
  const l = lab[3 * pixel]!;
  const a = lab[3 * pixel + 1]!;
  const b = lab[3 * pixel + 2]!;
  let best = 0;
  let least = Infinity;
  for (let left = among; left !== 0; left &= left - 1) {
    const bit = left & -left;
    const c = 3 * (31 - Math.clz32(bit));
    const offL = l - centre[c]!;
    const offA = a - centre[c + 1]!;
    const offB = b - centre[c + 2]!;
    const apart = offL * offL + offA * offA + offB * offB;
    if (apart >= least) continue;
    least = apart;
    best = bit;
  }
  return best;
}

function nearest(lab: Float32Array, at: number, centre: Float32Array): number {
  const l = lab[at]!;
  const a = lab[at + 1]!;
  const b = lab[at + 2]!;
  let best = 0;
  let least = Infinity;
  for (let c = 0, p = 0; p < centre.length; c++, p += 3) {
    const offL = l - centre[p]!;
    const offA = a - centre[p + 1]!;
    const offB = b - centre[p + 2]!;
    const apart = offL * offL + offA * offA + offB * offB;
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
