import type { NewPlan } from '../../server/contract/plans.ts';
import { note } from '../plan/make-plan.ts';
import { rememberPlan } from '../plan/made.ts';
import type { OnTable } from '../plan/table-of.ts';
import { place, settle } from '../table/way.ts';
import { service } from '../wire/service.ts';
import { peopleFor, setPeople } from './how-cut.ts';
import type { Scheme } from './scheme-table.ts';

/**
 * Has the same cards cut by a table of her own, or by ours again, and goes to that guide. For how many people
 * it is stays; ticks belong to the cuts that they were made on.
 */
export async function recut(
  { plan, pad }: OnTable,
  scheme: Scheme | null,
  pins: NewPlan['pins'],
): Promise<void> {
  // Her table has its own number of sheets, so that a wish for one is left behind.
  const { cards, without, taste } = plan.asked;
  const wish: NewPlan = {
    pad: pad.id,
    cards,
    from: plan.id,
    ...(pins && pins.length > 0 && { pins }),
    ...(without && { without }),
    ...(taste && { taste }),
    ...(scheme !== null && { scheme }),
  };
  const made = note(pad.id, plan.id, await service.makePlan(wish));
  setPeople(made.id, peopleFor(plan.id));
  rememberPlan(pad.id, made.id);
  // Elsewhere by now, she finds it when she comes back to the guide.
  const here = place.peek();
  if (here.at === 'guide' && here.plan === plan.id)
    settle({ at: 'guide', pad: pad.id, plan: made.id });
}
