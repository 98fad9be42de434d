import { labDistance } from '../colour/difference.ts';
import type { ListedSupply } from './supplies-csv.ts';
import type { Supply } from './supply.ts';

/** What a list does to her shelf. */
export interface ListedInto<Kept extends Supply> {
  /** Supplies that she has, as the list says they are now. */
  readonly changed: readonly Kept[];
  readonly added: readonly ListedSupply[];
  /** How many lines say what is so already. */
  readonly same: number;
}

/** The list is written to 1/1000; a colour nearer than this (CIELAB units) was not changed by hand. */
const AS_WRITTEN = 0.002;

/**
 * Lays a list beside her shelf, so that a list which was saved, changed by hand and brought back doubles
 * nothing: a line of the same kind and name as one that she has is that one, each of them taken once.
 *
 * Gives       a colour that was changed as typed, with `typed` as its uncertainty; an unchanged one as it was
 *             read. An empty number of sheets leaves the number that she has.
 */
export function listedInto<Kept extends Supply>(
  shelf: readonly Kept[],
  list: readonly ListedSupply[],
  typed: (supply: Kept, listed: ListedSupply) => Kept,
): ListedInto<Kept> {
  const left = [...shelf];
  const changed: Kept[] = [];
  const added: ListedSupply[] = [];
  let same = 0;
  for (const listed of list) {
    const at = left.findIndex(({ kind, name }) => kind === listed.kind && name === listed.name);
    if (at < 0) {
      added.push(listed);
      continue;
    }
    const [known] = left.splice(at, 1) as [Kept];
    const sheets = listed.sheets ?? known.sheets;
    const coloured = labDistance(known.lab, listed.lab) < AS_WRITTEN ? known : typed(known, listed);
    if (coloured === known && sheets === known.sheets) same += 1;
    else changed.push({ ...coloured, sheets });
  }
  return { changed, added, same };
}
