import type { Cell } from './light-cells.ts';
import { heightAt, median } from './surface.ts';

/** What the smooth light leaves over the bare table, as far as it is light: the edge of a shadow, a second lamp. */
export interface LightLeft {
  /** Logarithms to add to the light, at SIDE x SIDE places strewn evenly over the picture, rim to rim, row by row. */
  readonly at: Float64Array;
  /** How much of it there is over the table, as a standard deviation. */
  readonly spread: number;
}

/** Places a side. */
export const SIDE = 13;

/**
 * Looks for light that no smooth surface follows, in blocks of bare table.
 *
 * What is left there may also be the table's own: wood has light and dark boards. Light changes in brightness far more than in
 * colour, a material in both, so as much is taken for the table's as goes with the change in colour.
 *
 * Takes       cells of bare table, surface by surface, and the smooth light over the picture.
 * Gives       null where there is too little bare table to tell.
 */
export function lightLeft(
  surfaces: readonly (readonly Cell[])[],
  of: readonly Float64Array[],
): LightLeft | null {
  const blocks = surfaces.flatMap((cells) => blocksOf(cells, of));
  if (blocks.length < FEWEST_BLOCKS) return null;
  const mean = (value: (block: Block) => number): number =>
    blocks.reduce((sum, block) => sum + value(block), 0) / blocks.length;
  const all = mean(({ left }) => left ** 2);
  const light = Math.max(0, all - BY_COLOUR ** 2 * mean(({ colour }) => colour ** 2));
  const part = all === 0 ? 0 : light / all;
  const at = new Float64Array(SIDE * SIDE);
  for (let p = 0; p < at.length; p++)
    at[p] =
      part *
      leftNear(
        blocks,
        (2 * (p % SIDE)) / (SIDE - 1) - 1,
        (2 * Math.floor(p / SIDE)) / (SIDE - 1) - 1,
      );
  return { at, spread: Math.sqrt(light) };
}

/** The logarithm to add at a place in [-1, 1]. */
export function leftAt({ at }: LightLeft, x: number, y: number): number {
  const place = (value: number): number =>
    Math.max(0, Math.min(SIDE - 1.001, ((value + 1) / 2) * (SIDE - 1)));
  const [u, v] = [place(x), place(y)];
  const p = Math.floor(v) * SIDE + Math.floor(u);
  const [across, down] = [u % 1, v % 1];
  const upper = at[p]! + across * (at[p + 1]! - at[p]!);
  const lower = at[p + SIDE]! + across * (at[p + SIDE + 1]! - at[p + SIDE]!);
  return upper + down * (lower - upper);
}

interface Block {
  readonly x: number;
  readonly y: number;
  /** What is left in green, and how far red and blue part from it. */
  readonly left: number;
  readonly colour: number;
}

/** Blocks a side of the picture; the least cells in one, and the least blocks that tell anything. */
const BLOCKS = 10;
const FEWEST = 6;
const FEWEST_BLOCKS = 20;
/**
 * How many times more a material may change in brightness than in colour.
 *
 * Source      rendered tables under light that the smooth surface tells to 1 %, tuning seeds 1 to 8: wood 2.8 and 2.9, a cutting mat
 *             1.7, cloth 0.9 and 1.9; under shadows up to 15, boards and desks most of all.
 */
const BY_COLOUR = 3;

function blocksOf(cells: readonly Cell[], of: readonly Float64Array[]): Block[] {
  const left = cells.map(({ x, y, log }) => log.map((value, k) => value - heightAt(of[k]!, x, y)));
  const height = [0, 1, 2].map((k) => median(left.map((one) => one[k]!)));
  const blocks = new Map<number, number[]>();
  const along = (place: number): number =>
    Math.max(0, Math.min(BLOCKS - 1, Math.floor(((place + 1) / 2) * BLOCKS)));
  cells.forEach(({ x, y }, index) => {
    const key = BLOCKS * along(y) + along(x);
    const own = blocks.get(key);
    if (own === undefined) blocks.set(key, [index]);
    else own.push(index);
  });
  return [...blocks.values()]
    .filter((own) => own.length >= FEWEST)
    .map((own) => {
      const [r, g, b] = [0, 1, 2].map(
        (k) => median(own.map((index) => left[index]![k]!)) - height[k]!,
      ) as [number, number, number];
      return {
        x: own.reduce((sum, index) => sum + cells[index]!.x, 0) / own.length,
        y: own.reduce((sum, index) => sum + cells[index]!.y, 0) / own.length,
        left: g,
        colour: Math.hypot(r - g, b - g),
      };
    });
}

/** The mean of the blocks around, and of one more that holds nothing: far from all blocks nothing is added. */
function leftNear(blocks: readonly Block[], x: number, y: number): number {
  let [sum, all] = [0, 1];
  for (const block of blocks) {
    const weight = Math.exp(-((block.x - x) ** 2 + (block.y - y) ** 2) / (2 * AROUND ** 2));
    sum += weight * block.left;
    all += weight;
  }
  return sum / all;
}

/** How far around a place blocks count, in halves of the picture. A judgement; 0.15 and 0.3 did as well. */
const AROUND = 0.22;
