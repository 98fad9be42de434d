import type { LabImage } from '../colour/lab.ts';
import { fitPacked, heightAt } from './surface.ts';

const STEP = 1.5;
const SIDE_L = 96;
const SIDE = 176;
/** Pixels over which the light is taken as the same. */
const BLOCK = 8;

/** The light over the picture, block by block, and which colours without it are the table's. */
export interface TableColours {
  readonly across: number;
  /** For each block: what evens the light, and the cast to take off a and b. */
  readonly factor: Float32Array;
  readonly castA: Float32Array;
  readonly castB: Float32Array;
  /** A lookup over CIELAB in steps. */
  readonly isTable: Uint8Array;
}

/** The colours of the given pixels once the light is taken out, as a lookup over CIELAB. */
export function colourTable(image: LabImage, pixels: Int32Array, fromRim: boolean): TableColours {
  const { width, height, lab } = image;
  const colours = { ...lightOver(image, pixels), isTable: new Uint8Array(SIDE_L * SIDE * SIDE) };
  const idOf = ids;
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
    let together = 0;
    let upper = 0;
    let lower = 0;
    for (const offset of OFFSETS) {
      const id = idOf[key + offset] ?? 0;
      together += counts[id]!;
      upper |= upperRight[id]!;
      lower |= lowerLeft[id]!;
    }
    if (together < least || (fromRim && !isSpread(upper, lower))) continue;
    for (const offset of OFFSETS) colours.isTable[key + offset] = 1;
  }
  for (const key of keys) idOf[key] = 0;
  return colours;
}

/** The number of each step of CIELAB, 0 for none. Each call leaves it empty: to make a new one takes longer than its use. */
const ids = new Int32Array(SIDE_L * SIDE * SIDE);

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

/**
 * Which pixels have a colour of the table and are not barred.
 *
 * Takes       the picture, the table's colours, the bars, and whether all pixels are asked (1) or those in odd rows and
 *             columns only (2).
 * Gives       a byte for each pixel asked, row by row.
 */
export function tableMask(
  { width, height, lab }: LabImage,
  { across, factor, castA, castB, isTable }: TableColours,
  bars: Uint8Array,
  every: 1 | 2,
): Uint8Array {
  const columns = every === 1 ? width : width >> 1;
  const rows = every === 1 ? height : height >> 1;
  const mask = new Uint8Array(columns * rows);
  const perBlock = BLOCK / every;
  for (let row = 0, to = 0; row < rows; row++) {
    const y = row * every + every - 1;
    let pixel = y * width + every - 1;
    for (let column = 0, block = (y >> 3) * across; column < columns; block++) {
      const by = factor[block]! / STEP;
      const inA = SIDE / 2 + 0.5 - castA[block]! / STEP;
      const inB = SIDE / 2 + 0.5 - castB[block]! / STEP;
      const end = Math.min(columns, column + perBlock);
      for (; column < end; column++, to++, pixel += every) {
        if (bars[pixel] === 1) continue;
        const at = 3 * pixel;
        const l = clamp(((lab[at]! + 16) * by + 0.5) | 0, SIDE_L);
        const a = clamp((lab[at + 1]! * by + inA) | 0, SIDE);
        const b = clamp((lab[at + 2]! * by + inB) | 0, SIDE);
        mask[to] = isTable[(l * SIDE + a) * SIDE + b]!;
      }
    }
  }
  return mask;
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
  return keyOf(
    (lab[at]! + 16) * by,
    lab[at + 1]! * by - castA[block]! / STEP,
    lab[at + 2]! * by - castB[block]! / STEP,
  );
}

/** Of L + 16, a and b in steps. */
function keyOf(inL: number, inA: number, inB: number): number {
  const l = (inL + 0.5) | 0;
  const a = (inA + (SIDE / 2 + 0.5)) | 0;
  const b = (inB + (SIDE / 2 + 0.5)) | 0;
  return (clamp(l, SIDE_L) * SIDE + clamp(a, SIDE)) * SIDE + clamp(b, SIDE);
}

/**
 * How much light a place has beside lit table, if it shows the table at all: 1 in full light, less in the
 * shadow of a sheet or in a narrow gap between two, 0 when no shadow makes the table look so.
 *
 * Takes       a colour in CIELAB and its place in pixels of the preview, and how many times the light of the lit table
 *             it may have at most. Light scales (L + 16), a and b alike.
 */
export function shadeOfTable(
  { across, factor, castA, castB, isTable }: TableColours,
  [l, a, b]: readonly [number, number, number],
  x: number,
  y: number,
  lightest = 1,
): number {
  const block = (y >> 3) * across + (x >> 3);
  const by = factor[block]! / STEP;
  for (let shade = lightest; shade > DEEPEST; shade -= 0.04) {
    const lit = by / shade;
    const key = keyOf(
      (l + 16) * lit,
      a * lit - castA[block]! / STEP,
      b * lit - castB[block]! / STEP,
    );
    if (isTable[key] === 1) return shade;
  }
  return 0;
}

/** Between two sheets 2 mm apart less than a third of the light is left, as (L + 16) two thirds. */
const DEEPEST = 0.6;

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

function clamp(value: number, size: number): number {
  return value < 2 ? 2 : value > size - 3 ? size - 3 : value;
}
