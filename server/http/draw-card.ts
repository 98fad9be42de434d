import { z } from 'zod';
import { drawCard as drawPlanned } from '../from-photo-to-guide.ts';
import type { Edges } from './edges.ts';
import { found } from './found.ts';
import { guideAskOf, sidesShown } from './guide-ask.ts';
import type { KeptPlan } from './make-plan.ts';
import { swatchesInside } from './kept-swatches.ts';
import { swatchAddress } from './wire/sides.ts';

/** How a drawing has its papers: inside, so that it stands by itself, or beside, as addresses of swatches. */
export const Papers = z.object({
  papers: z
    .enum(['inside', 'beside'])
    .default('inside')
    .describe(
      'beside: the drawing names the addresses of its swatches, which many drawings share.',
    ),
});
export type Papers = z.infer<typeof Papers>['papers'];

/** The card of a plan as an SVG. */
export async function drawCard(
  edges: Edges,
  kept: KeptPlan,
  id: string,
  papers: Papers = 'inside',
): Promise<string> {
  const number = Number(/^(?:card-)?(\d{1,4})$/.exec(id)?.[1] ?? Number.NaN);
  const card = kept.batch.plan.cards.find((each) => each.number === number) ?? null;
  found(card, 'card', id);
  const picture =
    papers === 'beside'
      ? swatchesBeside(kept)
      : await swatchesInside(edges, kept, sidesShown(kept, number));
  return drawPlanned({ ...guideAskOf(kept), picture }, number);
}

/** The address of the swatch of each side, as it was when the plan was made. */
export function swatchesBeside({ swatches }: KeptPlan): (side: string) => string | null {
  return (side) => {
    const hash = swatches[side];
    return hash === undefined ? null : swatchAddress(side, hash);
  };
}
