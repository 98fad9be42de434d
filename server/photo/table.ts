import type { LabImage } from '../colour/lab.ts';
import { fitSurface, heightAt } from './surface.ts';
import type { Sample } from './surface.ts';

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
  const first = walk(image, colourTable(image, rim, true), barrier.of, rim);
  const inner = every(first, Math.max(1, Math.floor(count(first) / 20000)));
  const enough = inner.length > 500;
  const reached = enough ? walk(image, colourTable(image, inner, false), barrier.of, rim) : first;
  return { reached, roughness: barrier.roughness, share: count(reached) / reached.length };
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
  const steep = new Float32Array(width * height);
  for (let y = 1; y < height - 1; y++)
    for (let pixel = y * width + 1, end = (y + 1) * width - 1; pixel < end; pixel++) {
      const at = 3 * pixel;
      let sum = 0;
      for (let c = 0; c < 3; c++) {
        const dx = lab[at + 3 + c]! - lab[at - 3 + c]!;
        const dy = lab[at + 3 * width + c]! - lab[at - 3 * width + c]!;
        sum += dx * dx + dy * dy;
      }
      steep[pixel] = Math.sqrt(sum);
    }
  const sorted = Float32Array.from(rim, (pixel) => steep[pixel]!).sort();
  const usual = sorted[Math.floor(0.5 * sorted.length)]!;
  const high = sorted[Math.floor(0.95 * sorted.length)]!;
  // On a plain table nearly all differences are noise; one clearly beyond it is an edge.
  const limit = Math.max(1.6 * high, 4 * usual, 1.2);
  return { of: Uint8Array.from(steep, (value) => (value > limit ? 1 : 0)), roughness: usual };
}

type IsTable = (pixel: number) => boolean;

const STEP = 1.5;
const SIDE_L = 96;
const SIDE = 176;

/** The colours of the given pixels once the light is taken out, as a lookup over CIELAB. */
function colourTable(image: LabImage, pixels: Int32Array, fromRim: boolean): IsTable {
  const { width, height, lab } = image;
  const place = (pixel: number): { x: number; y: number } => ({
    x: (2 * (pixel % width)) / width - 1,
    y: (2 * Math.floor(pixel / width)) / height - 1,
  });
  const some = every2(pixels, 3000);
  const level = fitSurface(
    some.map((pixel): Sample => ({ ...place(pixel), value: Math.log(lab[3 * pixel]! + 16) })),
  ).of;
  const middle = level[0]!;
  const axis = (offset: number): Float64Array => {
    const { of } = fitSurface(
      some.map((pixel): Sample => {
        const { x, y } = place(pixel);
        const factor = Math.exp(middle - heightAt(level, x, y));
        return { x, y, value: lab[3 * pixel + offset]! * factor };
      }),
    );
    of[0] = 0;
    return of;
  };
  const [towardsA, towardsB] = [axis(1), axis(2)];
  const bin = (pixel: number): number => {
    const x = (2 * (pixel % width)) / width - 1;
    const y = (2 * ((pixel / width) | 0)) / height - 1;
    const factor = Math.exp(middle - heightAt(level, x, y));
    const l = (lab[3 * pixel]! + 16) * factor;
    const a = lab[3 * pixel + 1]! * factor - heightAt(towardsA, x, y);
    const b = lab[3 * pixel + 2]! * factor - heightAt(towardsB, x, y);
    const binL = clamp(Math.round(l / STEP), SIDE_L);
    const binA = clamp(Math.round(a / STEP) + SIDE / 2, SIDE);
    const binB = clamp(Math.round(b / STEP) + SIDE / 2, SIDE);
    return (binL * SIDE + binA) * SIDE + binB;
  };
  const counts = new Map<number, Tally>();
  for (const pixel of pixels) {
    const key = bin(pixel);
    const tally = counts.get(key) ?? { count: 0, segments: new Set<number>() };
    tally.count++;
    tally.segments.add(segmentOf(pixel, width, height));
    counts.set(key, tally);
  }
  const isTable = new Uint8Array(SIDE_L * SIDE * SIDE);
  const least = Math.max(2, 0.0008 * pixels.length);
  for (const key of counts.keys()) {
    const around = neighbours(key).flatMap((near) => counts.get(near) ?? []);
    const together = around.reduce((sum, tally) => sum + tally.count, 0);
    if (together < least) continue;
    if (fromRim && !isSpread(new Set(around.flatMap((tally) => [...tally.segments])))) continue;
    for (const near of neighbours(key)) isTable[near] = 1;
  }
  return (pixel) => isTable[bin(pixel)] === 1;
}

interface Tally {
  count: number;
  readonly segments: Set<number>;
}

const PER_SIDE = 10;

/** Which stretch of the rim a pixel lies at: ten stretches on each of four sides. */
function segmentOf(pixel: number, width: number, height: number): number {
  const x = (pixel % width) / width;
  const y = Math.floor(pixel / width) / height;
  const nearest = [y, 1 - x, 1 - y, x];
  const side = nearest.indexOf(Math.min(...nearest));
  const along = side % 2 === 0 ? x : y;
  return side * PER_SIDE + Math.floor(PER_SIDE * along);
}

/** A colour that stands on one side only, and not along most of it, is a sheet that reaches out of the picture. */
function isSpread(segments: ReadonlySet<number>): boolean {
  const perSide = [0, 0, 0, 0];
  for (const segment of segments) perSide[Math.floor(segment / PER_SIDE)]!++;
  const sides = perSide.filter((n) => n > 0).length;
  return (sides >= 2 && segments.size >= 3) || Math.max(...perSide) >= 0.85 * PER_SIDE;
}

const OFFSETS = [-1, 0, 1].flatMap((l) =>
  [-1, 0, 1].flatMap((a) => [-1, 0, 1].map((b) => (l * SIDE + a) * SIDE + b)),
);

function neighbours(key: number): number[] {
  return OFFSETS.map((offset) => key + offset).filter((k) => k >= 0 && k < SIDE_L * SIDE * SIDE);
}

function walk(
  image: LabImage,
  isTable: IsTable,
  barrier: Uint8Array,
  from: Int32Array,
): Uint8Array {
  const { width, height } = image;
  const reached = new Uint8Array(width * height);
  const seen = new Uint8Array(width * height);
  const queue = new Int32Array(width * height);
  let end = 0;
  const visit = (pixel: number): void => {
    if (seen[pixel] === 1) return;
    seen[pixel] = 1;
    if (barrier[pixel] === 1 || !isTable(pixel)) return;
    reached[pixel] = 1;
    queue[end++] = pixel;
  };
  for (const pixel of from) visit(pixel);
  for (let at = 0; at < end; at++) {
    const pixel = queue[at]!;
    const x = pixel % width;
    if (x > 0) visit(pixel - 1);
    if (x < width - 1) visit(pixel + 1);
    if (pixel >= width) visit(pixel - width);
    if (pixel + width < seen.length) visit(pixel + width);
  }
  return reached;
}

function count(mask: Uint8Array): number {
  let sum = 0;
  for (const value of mask) sum += value;
  return sum;
}

function every(mask: Uint8Array, step: number): Int32Array {
  const pixels: number[] = [];
  let at = 0;
  mask.forEach((value, pixel) => {
    if (value === 1 && at++ % step === 0) pixels.push(pixel);
  });
  return Int32Array.from(pixels);
}

function every2(pixels: Int32Array, about: number): number[] {
  const step = Math.max(1, Math.floor(pixels.length / about));
  return Array.from(pixels).filter((_, index) => index % step === 0);
}

function clamp(value: number, size: number): number {
  return value < 1 ? 1 : value > size - 2 ? size - 2 : value;
}
