import { INCH } from '../lengths/length.ts';
import { cutSteps, settingsOf } from './cut-steps.ts';
import { leftSizes } from './leftovers.ts';
import type { Slot } from './piece.ts';

/** A strip no wider than this curls and tears under a trimmer's blade (common practice, no source). */
const SLIVER = INCH / 8;

/**
 * What it takes to cut a sheet: the fewer the better. A stroke and a setting of the ruler count one each, a
 * sliver to trim away two; of patterned paper a turned piece outweighs them, as a print with an up lies
 * down on it.
 */
function effortOf(slot: Slot, patterned: boolean): number {
  const steps = cutSteps(slot).filter(({ kind }) => kind === 'cut');
  const slivers = leftSizes(slot).filter(
    ({ width, height }) => Math.min(width, height) <= SLIVER,
  ).length;
  const turned = patterned ? slot.pieces.filter((piece) => piece.turned).length : 0;
  return 1000 * turned + steps.length + settingsOf(steps) + 2 * slivers;
}

/** The slot that takes the least effort; of equal ones the one that leaves the largest part whole. */
export function leastEffort(slots: readonly Slot[], patterned: boolean): Slot {
  const ranked = slots.map((slot) => ({
    slot,
    effort: effortOf(slot, patterned),
    left: Math.max(0, ...leftSizes(slot).map(({ width, height }) => width * height)),
  }));
  return ranked.reduce((best, one) =>
    one.effort < best.effort || (one.effort === best.effort && one.left > best.left) ? one : best,
  ).slot;
}
