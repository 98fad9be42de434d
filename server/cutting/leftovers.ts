import type { Size } from '../lengths/length.ts';
import type { CutTree, CuttingScheme } from './piece.ts';

export interface Leftover {
  readonly slot: string;
  readonly size: Size;
}

/** What is left over of all sheets, the largest first. */
export function leftovers(scheme: CuttingScheme): Leftover[] {
  const all = scheme.slots.flatMap((slot) =>
    restsOf(slot.cuts).map((size) => ({ slot: slot.id, size })),
  );
  return all.sort((a, b) => b.size.width * b.size.height - a.size.width * a.size.height);
}

function restsOf(tree: CutTree): Size[] {
  if (tree.kind === 'rest') return [tree.size];
  return tree.kind === 'piece' ? [] : [...restsOf(tree.first), ...restsOf(tree.second)];
}
