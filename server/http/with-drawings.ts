import { setImmediate } from 'node:timers/promises';
import { z } from 'zod';
import type * as Wire from '../contract/plans.ts';
import { factsOf } from '../guide/facts.ts';
import { drawCard, swatchesBeside } from './draw-card.ts';
import type { Edges } from './edges.ts';
import { guideAskOf } from './guide-ask.ts';
import { planAt } from './make-plan.ts';
import type { KeptPlan } from './make-plan.ts';
import { planOnWire } from './wire/plans.ts';

/** Whether a plan that was made of another brings the drawings of the cards that look otherwise. */
export const Drawings = z.object({
  drawings: z
    .enum(['changed', 'none'])
    .default('none')
    .describe(
      'changed: a plan with `from` brings the drawings of the cards that look otherwise, and says of the others that they look the same, so that they need not be asked for one by one.',
    ),
});

/** A plan on the wire, with the drawings that were asked for. */
export async function withDrawings(
  edges: Edges,
  kept: KeptPlan,
  { drawings }: z.infer<typeof Drawings>,
): Promise<Wire.Plan> {
  const plan = planOnWire(kept);
  const { from } = kept.asked;
  if (drawings === 'none' || from === undefined) return plan;
  // The plan that it came from may have been deleted since.
  const before = await planAt(edges, from).then(looksOf, () => null);
  if (before === null) return plan;
  const after = looksOf(kept);
  const changed = new Map<number, string>();
  for (const { number } of plan.cards) {
    if (after.get(number) === before.get(number)) continue;
    changed.set(number, await drawCard(edges, kept, String(number), 'beside'));
    // Others are served between two drawings.
    await setImmediate();
  }
  const cards = plan.cards.map((card) => {
    const drawing = changed.get(card.number);
    return drawing === undefined ? { ...card, same: true as const } : { ...card, drawing };
  });
  return { ...plan, cards };
}

/**
 * By the number of a card all that its picture is drawn from: its layout, and of each layer the colour of its
 * supply as it was then, or the swatch of its side and the place on it. Pictures of equal text are equal.
 */
function looksOf(kept: KeptPlan): Map<number, string> {
  const { cards } = factsOf({ ...guideAskOf(kept), picture: swatchesBeside(kept) });
  return new Map(
    cards.map(({ number, layout, layers }) => [
      number,
      JSON.stringify([layout, layers.map(({ layer, paint }) => [layer.id, paint])]),
    ]),
  );
}
