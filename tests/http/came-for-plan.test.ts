import { describe, expect, test } from 'vitest';
import type { Plan, PlanSummary } from '../../server/contract/plans.ts';
import type { Supplies, Supply } from '../../server/contract/supplies.ts';
import { cameForPlan, wordOf } from '../../web/supplies/came-for-plan.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan, valueOf } from './mount.ts';

describe('a plan that has cardstock to find', () => {
  test('is chosen again by itself for cardstock that came, where it is the newest and nothing of it is cut', async () => {
    const service = await mount(await newFolder());
    const { id: pad } = await filledPad(service);
    const plan = await newPlan(service, pad);
    const listed = async (): Promise<PlanSummary[]> =>
      valueOf<{ plans: PlanSummary[] }>(await ask(service, 'GET', `/api/plans?pad=${pad}`)).plans;
    const shelf = async (kind: string, name: string): Promise<readonly Supply[]> => {
      const colour = { lab: [96, 0, 1] };
      await ask(service, 'POST', '/api/supplies', { kind, name, colour });
      return valueOf<Supplies>(await ask(service, 'GET', '/api/supplies')).supplies;
    };
    const all = await listed();
    expect(cameForPlan(plan, [], all, 0)).toEqual([]);
    expect(cameForPlan(plan, await shelf('ink', 'Just mixed'), all, 0)).toEqual([]);
    const has = await shelf('cardstock', 'Just bought');
    expect(cameForPlan(plan, has, all, 0).map(({ name }) => name)).toEqual(['Just bought']);
    expect(cameForPlan(plan, has, all, 1)).toEqual([]);

    // Two windows that do so at once ask the same, and one plan is made.
    const slots = Object.fromEntries(plan.sheetsUsed.map(({ slot, sheet }) => [slot, sheet]));
    const again = async (): Promise<Plan> => {
      const body = { slots, supplies: 'now' };
      const headers = { 'idempotency-key': wordOf(plan.id) };
      return valueOf<Plan>(
        await ask(service, 'POST', `/api/plans/${plan.id}/taken`, body, headers),
      );
    };
    const [chosen, twin] = await Promise.all([again(), again()]);
    expect(twin.id).toBe(chosen.id);
    // Taken back, the plan before stays as it is; the one that came of it knows the cardstock.
    expect(cameForPlan(plan, has, await listed(), 0)).toEqual([]);
    expect(cameForPlan(chosen, has, await listed(), 0)).toEqual([]);
  });
});
