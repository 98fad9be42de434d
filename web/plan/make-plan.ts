import type { NewPlan, Plan } from '../../server/contract/plans.ts';
import { go, settle } from '../table/way.ts';
import { service } from '../wire/service.ts';
import { plans, plansOf } from '../wire/shelves.ts';
import { rememberPlan } from './made.ts';
import { samePictures } from './same-pictures.ts';
import type { Wishes } from './steps.ts';

/** Asks for a first plan of a batch and goes to it. */
export async function makePlan(pad: string, wishes: Wishes): Promise<void> {
  const plan = await planFrom(pad, wishes);
  go({ at: 'plan', pad, plan: plan.id });
}

/** Plans again with other wishes, in place. */
export async function replan(pad: string, wishes: Wishes, from: string): Promise<Plan> {
  const plan = await planFrom(pad, wishes, from);
  settle({ at: 'plan', pad, plan: plan.id });
  return plan;
}

/** Has a plan with other sheets in its slots, in place; the wishes stay. */
export async function takePlan(
  pad: string,
  slots: Readonly<Record<string, string>>,
  from: string,
): Promise<Plan> {
  const plan = note(pad, from, await service.takePlan(from, slots));
  settle({ at: 'plan', pad, plan: plan.id });
  return plan;
}

async function planFrom(pad: string, wishes: Wishes, from: string | null = null): Promise<Plan> {
  const wanted: NewPlan = { ...wishes, pad, ...(from !== null && { from }) };
  return note(pad, from, await service.makePlan(wanted));
}

/** Puts a plan that was made on the table and after the one that it came from. */
function note(pad: string, from: string | null, made: Plan): Plan {
  const before = from === null ? null : plans.at(from).peek().value;
  const plan = samePictures(made, before);
  plans.put(plan.id, plan);
  const { id, createdAt, cards, value } = plan;
  const known = plansOf.at(pad).peek().value ?? [];
  plansOf.put(pad, [
    ...known.filter((one) => one.id !== id),
    { id, pad, createdAt, cards: cards.length, value, from },
  ]);
  rememberPlan(pad, plan.id);
  return plan;
}
