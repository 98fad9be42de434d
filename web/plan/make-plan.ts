import type { NewPlan, Plan } from '../../server/contract/plans.ts';
import { announce } from '../table/announce.tsx';
import { go, place, settle, type Station } from '../table/way.ts';
import { planWords } from '../words/plan.ts';
import { layBy } from '../offline/lay-by.ts';
import { whenIdle } from '../table/when-idle.ts';
import { service } from '../wire/service.ts';
import { plans, plansOf } from '../wire/shelves.ts';
import { bringDrawing, drawnAt } from './card-pictures.ts';
import { rememberPlan } from './made.ts';
import { samePictures } from './same-pictures.ts';
import type { Wishes } from './wishes.ts';

/**
 * Asks for a plan of newly chosen cards and goes to it, unless she has gone elsewhere meanwhile: then the way to the
 * plan leads to it. It follows the plan that she had until then, to which undo goes back.
 */
export async function makePlan(
  pad: string,
  cards: NewPlan['cards'],
  before: string | null,
): Promise<void> {
  const follows = before === null ? {} : { from: before, anew: true };
  const plan = note(pad, before, await service.makePlan({ pad, cards, ...follows }));
  rememberPlan(pad, plan.id);
  if (isAt('cards', pad)) go({ at: 'plan', pad, plan: plan.id });
  else announce(planWords.ready);
}

/** Plans again with other wishes. */
export function replan(pad: string, wishes: Wishes, from: string): Promise<Plan> {
  return planFrom(pad, wishes, from);
}

/** Has a plan with these sheets in its slots; the wishes stay. With `now`, cardstock and inks are chosen anew from her shelf as it is. */
export async function takePlan(
  pad: string,
  slots: Readonly<Record<string, string>>,
  from: string,
  supplies: 'then' | 'now' = 'then',
  word?: string,
): Promise<Plan> {
  return note(pad, from, await service.takePlan(from, slots, supplies, word));
}

/** Lays a plan that was made of another in its place, where she still looks at that one; tells whether she does. */
export function arrive(plan: Plan, from: Plan): boolean {
  const here = place.peek();
  const atPlan = isAt('plan', plan.pad);
  const stays = atPlan && 'plan' in here && here.plan === from.id;
  if (stays) settle({ at: 'plan', pad: plan.pad, plan: plan.id });
  // She may have gone to another plan meanwhile, but not to another station: then that one is hers.
  if (stays || !atPlan) rememberPlan(plan.pad, plan.id);
  return stays;
}

function isAt(station: Station, pad: string): boolean {
  const here = place.peek();
  return here.at === station && here.pad === pad;
}

async function planFrom(pad: string, wishes: Wishes, from: string): Promise<Plan> {
  const wanted: NewPlan = { ...wishes, pad, from, anew: false, keepOthers: true };
  return note(pad, from, await service.makePlan(wanted));
}

/** Puts a plan that was made on the table and after the one that it came from. */
export function note(pad: string, from: string | null, made: Plan): Plan {
  const before = from === null ? null : plans.at(from).peek().value;
  const plan = withoutDrawings(samePictures(made, before));
  plans.put(plan.id, plan);
  // It was never asked for by its address, so the offline worker does not know it yet.
  whenIdle(() => void layBy(`/api/plans/${plan.id}`, JSON.stringify(plan), 'application/json'));
  const { id, createdAt, cards, value } = plan;
  const known = plansOf.at(pad).peek().value ?? [];
  const changed = plan.asked.anew ? undefined : known.find((one) => one.id === from);
  const summary = { id, pad, createdAt, cards: cards.length, value, from };
  plansOf.put(pad, [
    ...known.filter((one) => one.id !== id),
    { ...summary, choice: changed?.choice ?? id, ticks: 0 },
  ]);
  return plan;
}

/** The drawings that came along go where pictures are put together; the plan is kept without them. */
function withoutDrawings(plan: Plan): Plan {
  const cards = plan.cards.map(({ drawing, ...card }) => {
    if (drawing !== undefined) bringDrawing(drawnAt(card), drawing);
    return card;
  });
  return { ...plan, cards };
}
