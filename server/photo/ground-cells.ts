import { linearOfByte } from '../colour/curves.ts';
import { homographyOf } from '../geometry/homography.ts';
import type { Quad } from '../geometry/points.ts';
import { rectangleQuad } from '../geometry/quad.ts';
import type { Cell } from './light-cells.ts';
import type { Picture } from './picture.ts';
import { heightAt } from './surface.ts';

/** The light as it is known so far: logarithms, a surface a channel. */
type Known = readonly [Float64Array, Float64Array, Float64Array];

/**
 * The plain parts of a printed sheet, colour by colour: what differs within one printed colour is light.
 *
 * Places strewn evenly over the sheet are looked at, those beside which nothing changes are kept, and the colours that
 * most of them show (once the light known so far is out) each make a surface of cells.
 *
 * Takes       the preview, the corners of the sheet in it, and the light known so far.
 * Gives       up to three surfaces; none of a sheet that is nowhere plain.
 */
export function groundCells(picture: Picture, corners: Quad<'photo'>, known: Known): Cell[][] {
  const places = placesOn(picture, corners, known);
  const plain = plainPlaces(places);
  const surfaces: Cell[][] = [];
  let left = plain;
  while (surfaces.length < COLOURS) {
    const own = ofOneColour(places, left);
    if (own.length < LEAST * SIDE * SIDE) break;
    const cells = cellsOf(places, own);
    if (cells.length >= FEWEST) surfaces.push(cells);
    const taken = new Set(own);
    left = left.filter((at) => !taken.has(at));
  }
  return surfaces;
}

/** Places a side, and how many of them make a cell. */
const SIDE = 72;
const BLOCK = 6;
const COLOURS = 3;
/** Part of all places that a colour shows in, and of those of a cell. */
const LEAST = 0.06;
const FILLED = 1 / 6;
const FEWEST = 8;
/** Beside a plain place light differs by less than this, as a logarithm. */
const STEP = 0.1;
/** How far one colour reaches from its middle, as a logarithm: the light is not quite known, and paper has a grain. */
const REACH = 0.12;
/** The part of a sheet's side left out at its edge. */
const RIM = 0.03;

export interface Places {
  /** Places a side of the sheet. */
  readonly side: number;
  /** Place in the picture in [-1, 1], two a place. */
  readonly at: Float64Array;
  /** Logarithms of light as seen, and with the known light taken out, three a place. */
  readonly seen: Float64Array;
  readonly evened: Float64Array;
}

/** Places strewn evenly over a sheet, `side` each way. */
export function placesOn(
  { width, height, rgb }: Picture,
  corners: Quad<'photo'>,
  known: Known,
  side = SIDE,
): Places {
  const toPhoto = homographyOf(rectangleQuad<'sheet'>(0, 0, 1, 1), corners);
  const [a, b, c, d, e, f, g, h, i] = toPhoto.rows;
  const at = new Float64Array(2 * side * side);
  const seen = new Float64Array(3 * side * side);
  const evened = new Float64Array(3 * side * side);
  for (let row = 0, place = 0; row < side; row++) {
    const v = RIM + ((1 - 2 * RIM) * (row + 0.5)) / side;
    const [overX, overY, overW] = [b * v + c, e * v + f, h * v + i];
    for (let column = 0; column < side; column++, place++) {
      const u = RIM + ((1 - 2 * RIM) * (column + 0.5)) / side;
      const w = g * u + overW;
      const px = (a * u + overX) / w;
      const py = (d * u + overY) / w;
      const x = Math.min(width - 1, Math.max(0, Math.floor(px)));
      const y = Math.min(height - 1, Math.max(0, Math.floor(py)));
      const inX = (2 * px) / width - 1;
      const inY = (2 * py) / height - 1;
      at[2 * place] = inX;
      at[2 * place + 1] = inY;
      const pixel = 3 * (y * width + x);
      const to = 3 * place;
      for (let k = 0; k < 3; k++) {
        const log = LOG[rgb[pixel + k]!]!;
        seen[to + k] = log;
        evened[to + k] = log - heightAt(known[k]!, inX, inY);
      }
    }
  }
  return { side, at, seen, evened };
}

const LOG = Float64Array.from(linearOfByte, (light) => Math.log(Math.max(1e-4, light)));

/** The places beside which nothing changes. */
export function plainPlaces({ side, evened }: Places): number[] {
  const plain: number[] = [];
  for (let row = 1; row < side - 1; row++)
    for (let column = 1; column < side - 1; column++) {
      const place = row * side + column;
      if (
        apart(evened, place - 1, place + 1) < STEP &&
        apart(evened, place - side, place + side) < STEP &&
        apart(evened, place, place + 1) < STEP
      )
        plain.push(place);
    }
  return plain;
}

function apart(evened: Float64Array, p: number, q: number): number {
  return Math.max(
    Math.abs(evened[3 * p]! - evened[3 * q]!),
    Math.abs(evened[3 * p + 1]! - evened[3 * q + 1]!),
    Math.abs(evened[3 * p + 2]! - evened[3 * q + 2]!),
  );
}

/** The places that show the commonest colour: from the fullest box of colours the middle moves to the mean around it. */
export function ofOneColour(
  { evened }: Places,
  left: readonly number[],
  reach = REACH,
): readonly number[] {
  const boxes = new Map<number, number[]>();
  for (const place of left) {
    let key = 0;
    for (let k = 0; k < 3; k++)
      key = 4096 * key + 2048 + Math.round(evened[3 * place + k]! / reach);
    const box = boxes.get(key);
    if (box === undefined) boxes.set(key, [place]);
    else box.push(place);
  }
  let own: number[] = [];
  for (const box of boxes.values()) if (box.length > own.length) own = box;
  const middle = new Float64Array(3);
  for (let round = 0; round < 3 && own.length > 0; round++) {
    middle.fill(0);
    for (const place of own) for (let k = 0; k < 3; k++) middle[k]! += evened[3 * place + k]!;
    for (let k = 0; k < 3; k++) middle[k]! /= own.length;
    own = [];
    for (const place of left)
      if (
        Math.abs(evened[3 * place]! - middle[0]!) < reach &&
        Math.abs(evened[3 * place + 1]! - middle[1]!) < reach &&
        Math.abs(evened[3 * place + 2]! - middle[2]!) < reach
      )
        own.push(place);
  }
  return own;
}

function cellsOf({ at, seen }: Places, own: readonly number[]): Cell[] {
  const across = SIDE / BLOCK;
  const sums = new Float64Array(6 * across * across);
  for (const place of own) {
    const cell =
      6 * (Math.floor(place / SIDE / BLOCK) * across + Math.floor((place % SIDE) / BLOCK));
    sums[cell]! += 1;
    sums[cell + 1]! += at[2 * place]!;
    sums[cell + 2]! += at[2 * place + 1]!;
    for (let k = 0; k < 3; k++) sums[cell + 3 + k]! += seen[3 * place + k]!;
  }
  const cells: Cell[] = [];
  for (let cell = 0; cell < sums.length; cell += 6) {
    const count = sums[cell]!;
    if (count < FILLED * BLOCK * BLOCK) continue;
    cells.push({
      x: sums[cell + 1]! / count,
      y: sums[cell + 2]! / count,
      log: [sums[cell + 3]! / count, sums[cell + 4]! / count, sums[cell + 5]! / count],
    });
  }
  return cells;
}
