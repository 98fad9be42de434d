import { describe, expect, test } from 'vitest';
import type { Plan, PlanSummary } from '../../server/contract/plans.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

async function listed(service: Mounted, pad: string): Promise<PlanSummary[]> {
  const answer = await ask(service, 'GET', `/api/plans?pad=${pad}`);
  return valueOf<{ plans: PlanSummary[] }>(answer).plans;
}

const made = async (service: Mounted, wish: object): Promise<Plan> =>
  valueOf<Plan>(await ask(service, 'POST', '/api/plans', wish));

describe('how plans of a pad follow each other', () => {
  test('cards chosen anew follow the plan before and begin a choice of their own; changes stay in theirs', async () => {
    const folder = await newFolder();
    const service = await mount(folder);
    const pad = await filledPad(service);
    const first = await newPlan(service, pad.id);
    const { cards } = first.asked;
    const wish = { pad: pad.id, cards };
    const changed = await made(service, { ...wish, from: first.id, taste: { busy: 1 } });
    const anew = await made(service, { ...wish, from: changed.id, anew: true });
    const slots = Object.fromEntries(anew.sheetsUsed.map(({ slot, sheet }) => [slot, sheet]));
    const taken = valueOf<Plan>(
      await ask(service, 'POST', `/api/plans/${anew.id}/taken`, { slots, supplies: 'then' }),
    );
    expect(taken.asked.anew).toBeUndefined();
    const told = (await listed(service, pad.id)).map(({ id, from, choice }) => [id, from, choice]);
    expect(told).toEqual([
      [first.id, null, first.id],
      [changed.id, first.id, first.id],
      [anew.id, changed.id, anew.id],
      [taken.id, anew.id, anew.id],
    ]);
    await ask(service, 'DELETE', `/api/plans/${first.id}`);
    expect((await listed(service, pad.id))[0]).toMatchObject({ choice: changed.id });
    await service.stop();
    const later = await mount(folder);
    expect((await listed(later, pad.id)).map(({ choice }) => choice)).toEqual([
      changed.id,
      anew.id,
      anew.id,
    ]);
  });

  test('the list says how many steps are ticked off in each, and of no other pad', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const plan = await newPlan(service, pad.id);
    const anew = await made(service, { ...plan.asked, from: plan.id, anew: true });
    for (const step of ['number', 'before'])
      await ask(service, 'POST', `/api/plans/${plan.id}/ticks`, { step, done: true });
    const ticks = async (): Promise<object> =>
      Object.fromEntries((await listed(service, pad.id)).map((one) => [one.id, one.ticks]));
    expect(await ticks()).toEqual({ [plan.id]: 2, [anew.id]: 0 });
    await ask(service, 'POST', `/api/plans/${plan.id}/ticks`, { step: 'number', done: false });
    expect(await ticks()).toEqual({ [plan.id]: 1, [anew.id]: 0 });
    const all = valueOf<{ plans: PlanSummary[] }>(await ask(service, 'GET', '/api/plans')).plans;
    expect(all.map((one) => one.ticks)).toEqual([1, 0]);
  });

  test('what only keeps papers where they lie is cut by the same guide, and what is done of it stays done', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const plan = await newPlan(service, pad.id);
    await ask(service, 'POST', `/api/plans/${plan.id}/ticks`, { step: 'before', done: true });
    const { layer, side } = plan.cards[0]!.layers.find((one) => one.side !== undefined)!;
    const pins = [{ card: 1, layer, side }];
    const from = { ...plan.asked, from: plan.id, keepOthers: true };
    const kept = await made(service, { ...from, pins });
    const anew = await made(service, { ...plan.asked, from: plan.id, anew: true });
    const other = await made(service, { ...from, without: [plan.sheetsUsed[0]!.sheet] });
    const ticks = async (id: string): Promise<unknown> =>
      valueOf<{ ticks: unknown }>(await ask(service, 'GET', `/api/plans/${id}/ticks`)).ticks;
    expect(await ticks(kept.id)).toEqual(['before']);
    expect(await ticks(anew.id)).toEqual([]);
    expect(await ticks(other.id)).toEqual([]);
  });
});
