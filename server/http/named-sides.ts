import { padNames, withNames } from '../pad/pad-names.ts';
import type { Records } from '../store/records.ts';
import type { SideRow } from '../store/rows.ts';

/** Sides of any pads, each colour called what its whole pad calls it. */
export async function namedSides(
  { sides: all }: Pick<Records, 'sides'>,
  sides: readonly SideRow[],
): Promise<SideRow[]> {
  const pads = new Set(sides.map(({ pad }) => pad));
  const names = new Map(
    await Promise.all([...pads].map(async (pad) => [pad, padNames(await all.ofPad(pad))] as const)),
  );
  return sides.map((side) => withNames([side], names.get(side.pad))[0]!);
}
