import { averaged } from './grid.ts';
import type { Outlines } from './outlines.ts';

/** Fields a side of the small outline map in a descriptor. */
export const MAP_SIDE = 64;

/**
 * A drawing in numbers that hold no colour and no light: where its outlines lie, as a small map.
 *
 * Takes       the outlines of a print.
 * Gives       MAP_SIDE x MAP_SIDE numbers in [0, 255], row by row: the part of each field that is outline.
 */
export function describeOutlines({ width, height, strength }: Outlines): number[] {
  const { values } = averaged(strength, width, height, MAP_SIDE);
  return [...values.map((value) => Math.round(255 * value))];
}
