import { drawCard as drawPlanned } from '../from-photo-to-guide.ts';
import type { Edges } from './edges.ts';
import { found } from './found.ts';
import { guideAskOf, sidesShown } from './guide-ask.ts';
import type { KeptPlan } from './make-plan.ts';

/** The card of a plan as an SVG that stands by itself, its papers inside. */
export async function drawCard({ store }: Edges, kept: KeptPlan, id: string): Promise<string> {
  const number = Number(/^(?:card-)?(\d{1,4})$/.exec(id)?.[1] ?? Number.NaN);
  const card = kept.batch.plan.cards.find((each) => each.number === number) ?? null;
  found(card, 'card', id);
  const pictures = new Map<string, string>();
  for (const side of sidesShown(kept, number)) {
    const hash = kept.swatches[side];
    if (hash === undefined) continue;
    const bytes = await store.files.read('swatches', hash);
    pictures.set(side, `data:image/jpeg;base64,${bytes.toString('base64')}`);
  }
  return drawPlanned(
    { ...guideAskOf(kept), picture: (side) => pictures.get(side) ?? null },
    number,
  );
}
