import { linearOfByte } from '../colour/curves.ts';
import { contains } from '../geometry/polygon.ts';
import type { Quad } from '../geometry/points.ts';
import { middleOf } from './find-sheets.ts';
import type { Picture } from './picture.ts';
import { patchOf } from './white-card.ts';

/** A square of the preview: mean light of those of its pixels that count. */
export interface Cell {
  /** Middle of the pixels that count, in [-1, 1]. */
  readonly x: number;
  readonly y: number;
  /** Logarithm of the mean linear light, channel by channel. */
  readonly log: readonly [number, number, number];
}

export const CELL = 16;

/** Cells of which at least a quarter of the looked-at pixels are marked: what stands out in one weighs little. */
export function cellsWhere({ width, height, rgb }: Picture, marked: Uint8Array): Cell[] {
  const cells: Cell[] = [];
  for (let top = 0; top < height; top += CELL)
    for (let left = 0; left < width; left += CELL) {
      let count = 0;
      let r = 0;
      let g = 0;
      let b = 0;
      let sumX = 0;
      let sumY = 0;
      for (let y = top; y < Math.min(height, top + CELL); y += 2)
        for (let x = left; x < Math.min(width, left + CELL); x += 2) {
          const pixel = y * width + x;
          if (marked[pixel] === 0) continue;
          count++;
          sumX += x;
          sumY += y;
          r += linearOfByte[rgb[3 * pixel]!]!;
          g += linearOfByte[rgb[3 * pixel + 1]!]!;
          b += linearOfByte[rgb[3 * pixel + 2]!]!;
        }
      if (count < CELL) continue;
      const log = (sum: number): number => Math.log(Math.max(1e-4, sum / count));
      cells.push({
        x: (2 * sumX) / count / width - 1,
        y: (2 * sumY) / count / height - 1,
        log: [log(r), log(g), log(b)],
      });
    }
  return cells;
}

/**
 * The cells of one plain sheet of paper around what is known to lie on it: it grows from cell to cell while
 * each is plain and nearly as its neighbour, as light falls off but print does not.
 */
export function plainCellsFrom(picture: Picture, corners: Quad<'photo'>): Cell[] {
  const { width, height } = picture;
  const columns = Math.floor(width / CELL);
  const rows = Math.floor(height / CELL);
  const known = new Map<number, Cell | null>();
  const cellAt = (at: number): Cell | null => {
    if (!known.has(at)) known.set(at, plainCell(picture, at % columns, Math.floor(at / columns)));
    return known.get(at)!;
  };
  const home = homeOf(picture, corners);
  if (home === null) return [];
  const grown = new Map<number, Cell>();
  const queue: number[] = [];
  for (let at = 0; at < columns * rows; at++) {
    const middle = {
      x: ((at % columns) + 0.5) * CELL,
      y: (Math.floor(at / columns) + 0.5) * CELL,
    };
    if (!contains(corners, middle) && !near(home, middle)) continue;
    const cell = cellAt(at);
    if (cell === null || !isAlike(cell, home)) continue;
    grown.set(at, cell);
    queue.push(at);
  }
  for (const at of queue) {
    const here = grown.get(at)!;
    const column = at % columns;
    const beside = [
      ...(column > 0 ? [at - 1] : []),
      ...(column < columns - 1 ? [at + 1] : []),
      at - columns,
      at + columns,
    ];
    for (const to of beside) {
      if (to < 0 || to >= columns * rows || grown.has(to)) continue;
      const cell = cellAt(to);
      if (cell === null || cell.log.some((value, k) => Math.abs(value - here.log[k]!) > STEP))
        continue;
      grown.set(to, cell);
      queue.push(to);
    }
  }
  return [...grown.values()];
}

interface Home {
  readonly x: number;
  readonly y: number;
  readonly log: readonly number[];
}

/** Middle and light of what is known to be white. */
function homeOf(picture: Picture, corners: Quad<'photo'>): Home | null {
  const patch = patchOf(picture, corners);
  if (patch === null) return null;
  return { ...middleOf(corners), log: patch.light.map((value) => Math.log(Math.max(1e-4, value))) };
}

/** A narrow strip may hold no cell, so those beside its middle count as well. */
function near(home: Home, place: { readonly x: number; readonly y: number }): boolean {
  return Math.hypot(home.x - place.x, home.y - place.y) < 2 * CELL;
}

function isAlike(cell: Cell, home: Home): boolean {
  return cell.log.every((value, k) => Math.abs(value - home.log[k]!) < ALIKE);
}

/** A cell where it begins is as light as the white itself, as a logarithm. */
const ALIKE = 0.15;
/** Light falls off by less than this from a cell to the next, as a logarithm. */
const STEP = 0.06;
/** Within a plain cell light differs by less than this part of its mean (noise and grain). */
const ROUGH = 0.07;

function plainCell({ width, rgb }: Picture, column: number, row: number): Cell | null {
  const sums = [0, 0, 0];
  let squares = 0;
  let count = 0;
  for (let y = row * CELL; y < (row + 1) * CELL; y += 2)
    for (let x = column * CELL; x < (column + 1) * CELL; x += 2) {
      const at = 3 * (y * width + x);
      for (let k = 0; k < 3; k++) sums[k]! += linearOfByte[rgb[at + k]!]!;
      squares += linearOfByte[rgb[at + 1]!]! ** 2;
      count++;
    }
  const mean = sums[1]! / count;
  if (Math.sqrt(Math.max(0, squares / count - mean * mean)) > ROUGH * mean) return null;
  const log = (k: number): number => Math.log(Math.max(1e-4, sums[k]! / count));
  return {
    x: (2 * (column + 0.5) * CELL) / width - 1,
    y: (2 * (row + 0.5) * CELL) / (rgb.length / 3 / width) - 1,
    log: [log(0), log(1), log(2)],
  };
}
