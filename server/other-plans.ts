/**
 * What else a planned batch could be: the next best, one sheet fewer, other sheets, a mend for the weakest card, other
 * numbers of sheets. It goes on from where from-photo-to-guide.ts has planned.
 */
import type { CutSettings } from './cutting/settings.ts';
import { SEED } from './from-photo-to-guide.ts';
import type { PlannedBatch, PlanWishes } from './from-photo-to-guide.ts';
import { byPlace, upOf, withoutPlaces } from './plan/faces-up.ts';
import { openCurve } from './plan/free/sheet-curve.ts';
import type { OpenCurve } from './plan/free/sheet-curve.ts';
import { layerChoices } from './plan/layer-choices.ts';
import type { LayerAsk, LayerChoice } from './plan/layer-choices.ts';
import { instanceOf } from './plan/instance.ts';
import type { Plan } from './plan/plan.ts';
import { laidOut } from './plan/plan-cards.ts';
import type { PlanAsk } from './plan/plan-cards.ts';
import { chosenDesigns, nextBest, planWith, planWithout } from './plan/plan-desk.ts';
import type { OtherPlan } from './plan/plan-desk.ts';
import type { Best } from './plan/plan-with.ts';
import { weakestCard } from './plan/weakest.ts';
import type { WeakestCard } from './plan/weakest.ts';

/** A batch that was planned, with the wishes it was planned by. */
export interface Planned {
  readonly batch: PlannedBatch;
  readonly ask: PlanWishes;
}

export function otherPlans({ batch, ask }: Planned, count: number): OtherPlan[] {
  return nextBest(askOf(batch, ask), batch.plan, count);
}

export function withoutSheet({ batch, ask }: Planned, sheet: string): OtherPlan {
  return planWithout(askOf(batch, ask), batch.plan, sheet);
}

/**
 * The batch with these sheets in its slots. `anew` where the wishes are not those that it was planned by: then how good
 * another plan could be is found anew, among the plans of these cuts or, where any may be made, as that no card passes 1,
 * and each sheet that stays in its slot shows the sides that it showed.
 */
export function withSheets(
  { batch, ask }: Planned,
  slots: Readonly<Record<string, string>>,
  anew: Anew | null = null,
): PlannedBatch {
  const asked = askOf(batch, ask);
  const best = anew === null ? batch.plan : bestAnew(asked, batch.plan, anew);
  return { ...batch, plan: planWith(asked, best, slots, anew === null ? null : batch.plan) };
}

export type Anew = 'these cuts' | 'any cuts';

function bestAnew(ask: PlanAsk, plan: Plan, anew: Anew): Best {
  if (anew === 'any cuts') return { bound: ask.cards.length, proven: false };
  const instance = instanceOf(ask);
  return laidOut(instance, [chosenDesigns(instance, plan)]).solution;
}

/** What could lie in one layer of one card, and whether her other wishes let it. */
export function choicesOf({ batch, ask }: Planned, where: LayerAsk): LayerChoice[] {
  return layerChoices(askOf(batch, ask), batch.plan, where);
}

export function weakestOf({ batch, ask }: Planned): WeakestCard | null {
  return weakestCard(askOf(batch, ask), batch.plan);
}

/** What fewer sheets cost, to be worked out bit by bit; the plan itself is its first point. */
export function curveOf({ batch, ask }: Planned, settings: CutSettings): OpenCurve {
  const { cards, scheme, plan } = batch;
  // All points are told by the sides as a whole, as other cuts are not known before they are found.
  const whole = { ...askOf(batch, ask), pad: withoutPlaces(ask.pad) };
  const { value } = byPlace(ask.pad) ? planWith(whole, plan, plan.slots) : plan;
  // What other cuts could be worth is not known yet, but that no card can be worth more than 1.
  const there = { sheets: scheme.slots.length, value, bound: cards.length };
  return openCurve({ ...ask, cards, settings, seed: SEED }, there);
}

function askOf({ cards, scheme, plan }: PlannedBatch, ask: PlanWishes): PlanAsk {
  return { ...ask, cards, scheme, seed: SEED, ...upOf(plan) };
}
