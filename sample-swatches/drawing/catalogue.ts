import * as blooms from './blooms.ts';
import type { Drawing } from './drawing.ts';
import * as geometry from './geometry.ts';
import * as hand from './hand.ts';
import * as orchard from './orchard.ts';
import * as shore from './shore.ts';
import * as sky from './sky.ts';

/** Every print that can be drawn. */
export const drawings: readonly Drawing[] = [blooms, geometry, hand, orchard, shore, sky].flatMap(
  (family) => Object.values(family),
);

export function drawingOf(name: string): Drawing {
  const found = drawings.find((drawing) => drawing.name === name);
  if (found === undefined)
    throw new RangeError(`Expected the name of a drawing but received ${name}`);
  return found;
}
