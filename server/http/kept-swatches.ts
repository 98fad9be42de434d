import { Refusal } from '../refusals/refusal.ts';
import type { Edges } from './edges.ts';
import type { KeptPlan } from './make-plan.ts';

/** The swatches of some sides of a kept plan as data addresses, for a drawing that stands by itself. */
export async function swatchesInside(
  { store }: Edges,
  kept: KeptPlan,
  sides: readonly string[],
): Promise<(side: string) => string | null> {
  const pictures = await ofSides(kept, sides, (hash) => store.files.read('swatches', hash));
  return (side) => {
    const bytes = pictures.get(side);
    return bytes === undefined ? null : `data:image/jpeg;base64,${bytes.toString('base64')}`;
  };
}

/** The swatch files of a kept plan by the id of their side. */
export async function swatchFilesOf(
  { store }: Edges,
  kept: KeptPlan,
): Promise<Record<string, string>> {
  const files = await ofSides(kept, Object.keys(kept.swatches), (hash) =>
    store.files.readable('swatches', hash),
  );
  return Object.fromEntries(files);
}

/** What is had of the swatch of each side; a side whose file is gone is left out, as it is drawn in its plain colours. */
async function ofSides<T>(
  { swatches }: KeptPlan,
  sides: readonly string[],
  get: (hash: string) => Promise<T>,
): Promise<Map<string, T>> {
  const had = new Map<string, T>();
  for (const side of sides) {
    const hash = swatches[side];
    if (hash === undefined) continue;
    try {
      had.set(side, await get(hash));
    } catch (fault) {
      if (!(fault instanceof Refusal && fault.kind === 'not-found')) throw fault;
    }
  }
  return had;
}
