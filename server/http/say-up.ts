import { withUp } from '../pattern/told-up.ts';
import type { ToldUp } from '../pattern/told-up.ts';
import type { SideRow } from '../store/rows.ts';
import type { Edges } from './edges.ts';
import { found } from './found.ts';

/** Keeps which way she says the print of a side is up; plans that are made from now on go by it. */
export async function sayUp(
  edges: Edges,
  { id, pad }: SideRow,
  up: ToldUp,
  hold: (revision: number) => void,
): Promise<SideRow> {
  const kept = await edges.store.write(async (records) => {
    const side = found(await records.sides.at(id), 'side', id);
    hold(side.revision);
    await records.sides.put({ ...side, pattern: withUp(side.pattern, up) });
    await records.pads.touch(pad);
    return found(await records.sides.at(id), 'side', id);
  });
  edges.changes.tell(pad);
  return kept;
}
