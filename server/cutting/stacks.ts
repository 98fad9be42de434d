import type { CutTree, CuttingScheme } from './piece.ts';

/** Sheets that lie on each other under the blade: ids of slots that are cut alike. */
export interface Stack {
  readonly slots: readonly string[];
}

/**
 * Groups slots whose cuts are the same, whatever cards their pieces are for.
 *
 * Takes  the most sheets that the trimmer cuts cleanly at once (common practice, no source: three or
 *        four of patterned paper, one or two of heavy cardstock).
 */
export function stacksOf(scheme: CuttingScheme, most: number): Stack[] {
  const alike = new Map<string, string[]>();
  for (const slot of scheme.slots) {
    const key = wayOf(slot.cuts);
    alike.set(key, [...(alike.get(key) ?? []), slot.id]);
  }
  return [...alike.values()].flatMap((slots) =>
    Array.from({ length: Math.ceil(slots.length / most) }, (_, index) => ({
      slots: slots.slice(index * most, (index + 1) * most),
    })),
  );
}

function wayOf(tree: CutTree): string {
  if (tree.kind !== 'cut') return tree.kind === 'piece' ? 'p' : 'r';
  return `(${tree.way} ${tree.at} ${wayOf(tree.first)} ${wayOf(tree.second)})`;
}
