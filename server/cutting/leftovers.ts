import { INCH } from '../lengths/length.ts';
import type { Size } from '../lengths/length.ts';
import type { CutTree, CuttingScheme, Slot } from './piece.ts';

export interface Leftover {
  readonly slot: string;
  readonly size: Size;
}

/** Narrower than this it is a scrap, not stock (common practice, no source). */
const WORTH_KEEPING = INCH;

/** What is left over of all sheets, the largest first. */
export function leftovers(scheme: CuttingScheme): Leftover[] {
  return scheme.slots
    .flatMap((slot) => restsOf(slot.cuts).map((size) => ({ slot: slot.id, size })))
    .sort((a, b) => area(b.size) - area(a.size));
}

/** What is left over of one sheet and at least an inch wide both ways, the largest first. */
export function worthKeeping({ cuts }: Slot): Size[] {
  return restsOf(cuts)
    .filter(({ width, height }) => Math.min(width, height) >= WORTH_KEEPING)
    .sort((a, b) => area(b) - area(a));
}

/** What is left over of one sheet, scraps too. */
export function leftSizes({ cuts }: Slot): Size[] {
  return restsOf(cuts);
}

function restsOf(tree: CutTree): Size[] {
  if (tree.kind === 'rest') return [tree.size];
  return tree.kind === 'piece' ? [] : [...restsOf(tree.first), ...restsOf(tree.second)];
}

function area({ width, height }: Size): number {
  return width * height;
}
