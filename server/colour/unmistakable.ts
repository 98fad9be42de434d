import { offLine } from './company.ts';
import type { Lab } from './lab.ts';

/**
 * The colours that no two others can be mixed to: a pixel near one of them shows it, on however soft a border it lies.
 * So the dots of a dark ink are told that are too small to hold a flat pixel.
 *
 * Gives       their indices.
 */
export function unmistakable(colours: readonly Lab[]): number[] {
  return [...colours.keys()].filter((index) =>
    colours.every(
      (p, i) =>
        i === index ||
        colours.every((q, j) => j <= i || j === index || offLine(colours[index]!, p, q) > CLEAR),
    ),
  );
}

/** A mixture passes a colour further off than this, in CIELAB units: twice `NEAR`. */
const CLEAR = 12;

/** A pixel nearer than this to an unmistakable colour shows it, in CIELAB units. */
export const NEAR = 6;
