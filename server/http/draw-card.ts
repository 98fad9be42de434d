import { drawCard as drawPlanned } from '../from-photo-to-guide.ts';
import type { Edges } from './edges.ts';
import { found } from './found.ts';
import { guideAskOf, sidesShown } from './guide-ask.ts';
import type { KeptPlan } from './make-plan.ts';
import { swatchesInside } from './swatches-inside.ts';

/** The card of a plan as an SVG that stands by itself, its papers inside. */
export async function drawCard(edges: Edges, kept: KeptPlan, id: string): Promise<string> {
  const number = Number(/^(?:card-)?(\d{1,4})$/.exec(id)?.[1] ?? Number.NaN);
  const card = kept.batch.plan.cards.find((each) => each.number === number) ?? null;
  found(card, 'card', id);
  const picture = await swatchesInside(edges, kept, sidesShown(kept, number));
  return drawPlanned({ ...guideAskOf(kept), picture }, number);
}
