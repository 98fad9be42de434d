import type { Edges } from './edges.ts';
import type { KeptPlan } from './make-plan.ts';

/** The swatches of some sides of a kept plan as data addresses, for a drawing that stands by itself. */
export async function swatchesInside(
  { store }: Edges,
  kept: KeptPlan,
  sides: readonly string[],
): Promise<(side: string) => string | null> {
  const pictures = new Map<string, string>();
  for (const side of sides) {
    const hash = kept.swatches[side];
    if (hash === undefined) continue;
    const bytes = await store.files.read('swatches', hash);
    pictures.set(side, `data:image/jpeg;base64,${bytes.toString('base64')}`);
  }
  return (side) => pictures.get(side) ?? null;
}
