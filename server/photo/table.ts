import type { LabImage } from '../colour/lab.ts';
import { fitPacked, heightAt, rankInPlace } from './surface.ts';

/** Which pixels of the preview show the table, as far as it can be walked to from the picture's rim. */
export interface Table {
  readonly reached: Uint8Array;
  /** How far two neighbouring pixels of bare table differ, in CIELAB units: large on wood and cloth. */
  readonly roughness: number;
  /** Part of the picture that is table. */
  readonly share: number;
}

/**
 * Finds the table that the sheets lie on.
 *
 * The rim of the picture is table for the most part. Its light is taken out with a smooth surface, the
 * colours that remain there (one on a board, a few on cloth, a range on wood) are the table's, and
 * everything of these colours that can be walked to from the rim without crossing an edge sharper than
 * the table's own is table. Then all is done once more from the table found, which lies around
 * the sheets and not only at the rim.
 */
export function findTable(image: LabImage): Table {
  const rim = rimPixels(image);
  const barrier = roughPixels(image, rim);
  // The first walk only fetches colours, so that every other row and column will do.
  const first = walk(image, colourTable(image, rim, true), barrier.of, rim, 2);
  const inner = someOf(first.reached, first.count, 20000);
  const { reached, count } =
    inner.length > 500
      ? walk(image, colourTable(image, inner, false), barrier.of, rim, 1)
      : walk(image, colourTable(image, rim, true), barrier.of, rim, 1);
  return { reached, roughness: barrier.roughness, share: count / reached.length };
}

function rimPixels({ width, height }: LabImage): Int32Array {
  const band = Math.max(3, Math.round(0.01 * Math.max(width, height)));
  const pixels: number[] = [];
  for (let y = 1; y < height - 1; y += 2)
    for (let x = 1; x < width - 1; x += 2)
      if (Math.min(x, y, width - 1 - x, height - 1 - y) <= band) pixels.push(y * width + x);
  return Int32Array.from(pixels);
}

/** Difference to the right and lower neighbour, against what is usual on the table. */
function roughPixels(image: LabImage, rim: Int32Array): { of: Uint8Array; roughness: number } {
  const { width, height, lab } = image;
  const squared = new Float32Array(width * height);
  const row = 3 * width;
  for (let y = 1; y < height - 1; y++)
    for (
      let pixel = y * width + 1, end = (y + 1) * width - 1, at = 3 * pixel;
      pixel < end;
      pixel++
    ) {
      const xl = lab[at + 3]! - lab[at - 3]!;
      const xa = lab[at + 4]! - lab[at - 2]!;
      const xb = lab[at + 5]! - lab[at - 1]!;
      const yl = lab[at + row]! - lab[at - row]!;
      const ya = lab[at + row + 1]! - lab[at - row + 1]!;
      const yb = lab[at + row + 2]! - lab[at - row + 2]!;
      squared[pixel] = xl * xl + xa * xa + xb * xb + yl * yl + ya * ya + yb * yb;
      at += 3;
    }
  const ofRim = Float32Array.from(rim, (pixel) => squared[pixel]!);
  const usual = Math.sqrt(rankInPlace(ofRim, Math.floor(0.5 * ofRim.length)));
  const high = Math.sqrt(rankInPlace(ofRim, Math.floor(0.95 * ofRim.length)));
  // On a plain table nearly all differences are noise; one clearly beyond it is an edge.
  const limit = Math.max(1.6 * high, 4 * usual, 1.2) ** 2;
  const of = new Uint8Array(squared.length);
  for (let pixel = 0; pixel < of.length; pixel++) if (squared[pixel]! > limit) of[pixel] = 1;
  return { of, roughness: usual };
}

const STEP = 1.5;
const SIDE_L = 96;
const SIDE = 176;
/** Pixels over which the light is taken as the same. */
const BLOCK = 8;

/** The light over the picture, block by block, and which colours without it are the table's. */
interface TableColours {
  readonly across: number;
  /** For each block: what evens the light, and the cast to take off a and b. */
  readonly factor: Float32Array;
  readonly castA: Float32Array;
  readonly castB: Float32Array;
  /** A lookup over CIELAB in steps. */
  readonly isTable: Uint8Array;
}

/** The colours of the given pixels once the light is taken out, as a lookup over CIELAB. */
function colourTable(image: LabImage, pixels: Int32Array, fromRim: boolean): TableColours {
  const { width, height, lab } = image;
  const colours = { ...lightOver(image, pixels), isTable: new Uint8Array(SIDE_L * SIDE * SIDE) };
  const idOf = new Int32Array(SIDE_L * SIDE * SIDE);
  const keys: number[] = [0];
  const counts = new Int32Array(pixels.length + 1);
  // Two sides of the rim in each: ten bits a side.
  const upperRight = new Int32Array(pixels.length + 1);
  const lowerLeft = new Int32Array(pixels.length + 1);
  for (const pixel of pixels) {
    const x = pixel % width;
    const y = (pixel - x) / width;
    const key = binOf(lab, pixel, x, y, colours);
    let id = idOf[key]!;
    if (id === 0) {
      id = keys.length;
      idOf[key] = id;
      keys.push(key);
    }
    counts[id]!++;
    if (!fromRim) continue;
    const segment = segmentOf(x / width, y / height);
    if (segment < 2 * PER_SIDE) upperRight[id]! |= 1 << segment;
    else lowerLeft[id]! |= 1 << (segment - 2 * PER_SIDE);
  }
  const least = Math.max(2, 0.0008 * pixels.length);
  for (let own = 1; own < keys.length; own++) {
    const key = keys[own]!;
    let [together, upper, lower] = [0, 0, 0];
    for (const offset of OFFSETS) {
      const id = idOf[key + offset] ?? 0;
      together += counts[id]!;
      upper |= upperRight[id]!;
      lower |= lowerLeft[id]!;
    }
    if (together < least || (fromRim && !isSpread(upper, lower))) continue;
    for (const offset of OFFSETS) colours.isTable[key + offset] = 1;
  }
  return colours;
}

function lightOver(image: LabImage, pixels: Int32Array): Omit<TableColours, 'isTable'> {
  const { width, height, lab } = image;
  const every = Math.max(1, Math.floor(pixels.length / 1000));
  const samples = new Float64Array(3 * Math.ceil(pixels.length / every));
  const fitted = (value: (pixel: number, at: number) => number): Float64Array => {
    for (let i = 0, at = 0; i < pixels.length; i += every, at += 3) {
      const pixel = pixels[i]!;
      const x = pixel % width;
      samples[at] = (2 * x) / width - 1;
      samples[at + 1] = (2 * (pixel - x)) / width / height - 1;
      samples[at + 2] = value(pixel, at);
    }
    return fitPacked(samples).of;
  };
  const level = fitted((pixel) => Math.log(lab[3 * pixel]! + 16));
  const middle = level[0]!;
  const factorAt = (x: number, y: number): number => Math.exp(middle - heightAt(level, x, y));
  const towards = [1, 2].map((offset) => {
    const of = fitted(
      (pixel, at) => lab[3 * pixel + offset]! * factorAt(samples[at]!, samples[at + 1]!),
    );
    of[0] = 0;
    return of;
  });
  const across = Math.ceil(width / BLOCK);
  const down = Math.ceil(height / BLOCK);
  const factor = new Float32Array(across * down);
  const castA = new Float32Array(across * down);
  const castB = new Float32Array(across * down);
  for (let row = 0, block = 0; row < down; row++)
    for (let column = 0; column < across; column++, block++) {
      const x = (2 * BLOCK * (column + 0.5)) / width - 1;
      const y = (2 * BLOCK * (row + 0.5)) / height - 1;
      factor[block] = factorAt(x, y);
      castA[block] = heightAt(towards[0]!, x, y);
      castB[block] = heightAt(towards[1]!, x, y);
    }
  return { across, factor, castA, castB };
}

/** The step of CIELAB in which a pixel falls without its light. */
function binOf(
  lab: Float32Array,
  pixel: number,
  x: number,
  y: number,
  { across, factor, castA, castB }: Omit<TableColours, 'isTable'>,
): number {
  const block = (y >> 3) * across + (x >> 3);
  const by = factor[block]! / STEP;
  const at = 3 * pixel;
  const l = ((lab[at]! + 16) * by + 0.5) | 0;
  const a = (lab[at + 1]! * by - castA[block]! / STEP + (SIDE / 2 + 0.5)) | 0;
  const b = (lab[at + 2]! * by - castB[block]! / STEP + (SIDE / 2 + 0.5)) | 0;
  return (clamp(l, SIDE_L) * SIDE + clamp(a, SIDE)) * SIDE + clamp(b, SIDE);
}

const PER_SIDE = 10;

/** Which stretch of the rim a place in [0, 1) lies at: ten stretches on each of four sides. */
function segmentOf(x: number, y: number): number {
  const nearest = Math.min(y, 1 - x, 1 - y, x);
  const side = nearest === y ? 0 : nearest === 1 - x ? 1 : nearest === 1 - y ? 2 : 3;
  return side * PER_SIDE + Math.floor(PER_SIDE * (side % 2 === 0 ? x : y));
}

/** A colour that stands on one side only, and not along most of it, is a sheet that reaches out of the picture. */
function isSpread(upperRight: number, lowerLeft: number): boolean {
  const perSide = [upperRight, upperRight >> PER_SIDE, lowerLeft, lowerLeft >> PER_SIDE].map(
    (bits) => ones(bits & ((1 << PER_SIDE) - 1)),
  );
  const sides = perSide.filter((n) => n > 0).length;
  const segments = perSide.reduce((sum, n) => sum + n, 0);
  return (sides >= 2 && segments >= 3) || Math.max(...perSide) >= 0.85 * PER_SIDE;
}

function ones(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count++;
  return count;
}

/** A step of CIELAB and its 26 neighbours. The outermost steps are never used, so that none falls out. */
const OFFSETS = Int32Array.from(
  [-1, 0, 1].flatMap((l) =>
    [-1, 0, 1].flatMap((a) => [-1, 0, 1].map((b) => (l * SIDE + a) * SIDE + b)),
  ),
);

/** All that has the table's colours and can be walked to from the rim; with a stride, of each so many rows. */
function walk(
  { width, height, lab }: LabImage,
  colours: TableColours,
  barrier: Uint8Array,
  from: Int32Array,
  stride: 1 | 2,
): { reached: Uint8Array; count: number } {
  const reached = new Uint8Array(width * height);
  const seen = new Uint8Array(width * height);
  const queue = new Int32Array(width * height);
  const { isTable } = colours;
  const down = stride * width;
  let end = 0;
  const visit = (pixel: number, x: number): void => {
    seen[pixel] = 1;
    if (barrier[pixel] === 1) return;
    if (isTable[binOf(lab, pixel, x, (pixel / width) | 0, colours)] === 0) return;
    reached[pixel] = 1;
    queue[end++] = pixel;
  };
  for (const pixel of from) if (seen[pixel] === 0) visit(pixel, pixel % width);
  for (let at = 0; at < end; at++) {
    const pixel = queue[at]!;
    const x = pixel % width;
    if (x >= stride && seen[pixel - stride] === 0) visit(pixel - stride, x - stride);
    if (x < width - stride && seen[pixel + stride] === 0) visit(pixel + stride, x + stride);
    if (pixel >= down && seen[pixel - down] === 0) visit(pixel - down, x);
    if (pixel + down < seen.length && seen[pixel + down] === 0) visit(pixel + down, x);
  }
  return { reached, count: end };
}

/** At least half, at most all of so many pixels of a mask, evenly spread. */
function someOf(mask: Uint8Array, count: number, about: number): Int32Array {
  const step = Math.max(1, Math.floor(count / about));
  const pixels = new Int32Array(Math.ceil(count / step));
  for (let pixel = 0, at = 0; pixel < mask.length; pixel++)
    if (mask[pixel] === 1 && at++ % step === 0) pixels[(at - 1) / step] = pixel;
  return pixels;
}

function clamp(value: number, size: number): number {
  return value < 2 ? 2 : value > size - 3 ? size - 3 : value;
}
