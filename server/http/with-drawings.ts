import { setImmediate } from 'node:timers/promises';
import { z } from 'zod';
import type * as Wire from '../contract/plans.ts';
import type { ChosenCard } from '../plan/plan.ts';
import { drawCard } from './draw-card.ts';
import type { Edges } from './edges.ts';
import { planAt } from './make-plan.ts';
import type { KeptPlan } from './make-plan.ts';
import { planOnWire } from './wire/plans.ts';

/** Whether a plan that was made of another brings the drawings of the cards that it changes. */
export const Drawings = z.object({
  drawings: z
    .enum(['changed', 'none'])
    .default('none')
    .describe(
      'changed: a plan with `from` brings the drawings of the cards that it makes otherwise, so that they need not be asked for one by one.',
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
  const before = await planAt(edges, from).catch(() => null);
  if (before === null) return plan;
  const known = new Set(before.batch.plan.cards.map((card) => madeOf(card, before)));
  const changed = new Map<number, string>();
  for (const card of kept.batch.plan.cards) {
    if (known.has(madeOf(card, kept))) continue;
    changed.set(card.number, await drawCard(edges, kept, String(card.number), 'beside'));
    // Others are served between two drawings.
    await setImmediate();
  }
  const cards = plan.cards.map((card) => {
    const drawing = changed.get(card.number);
    return drawing === undefined ? card : { ...card, drawing };
  });
  return { ...plan, cards };
}

/** All that a picture shows: the card, its layers, and the slots that its pieces are cut from. */
function madeOf({ number, layout, layers }: ChosenCard, { batch }: KeptPlan): string {
  const { scheme, plan } = batch;
  const slots = scheme.slots
    .filter(({ pieces }) => pieces.some(({ piece }) => piece.card === number))
    .map(({ id }) => [id, plan.slots[id]]);
  return JSON.stringify([number, layout, layers, slots]);
}
