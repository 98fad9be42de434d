import { expect, test } from 'vitest';
import type * as Plans from '../../server/contract/plans.ts';
import type * as Again from '../../server/contract/plans-again.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

test('another paper leaves other cards as they lie where that costs little; the better plan can be had at once', async () => {
  const service = await mount(await newFolder());
  const pad = await filledPad(service);
  const { asked } = await newPlan(service, pad.id);
  const cards = [{ ...asked.cards[0]!, count: 5 }];
  const plan = valueOf<Plans.Plan>(
    await ask(service, 'POST', '/api/plans', { pad: pad.id, cards }),
  );
  const wished = await wishKept(service, plan);
  expect(wished, 'some wish that costs little').not.toBeNull();
  const { kept, pins } = wished!;
  const { otherwise } = kept;
  expect(otherwise!.gain).toBeLessThanOrEqual(0.01 * kept.cards.length + 1e-9);
  expect(kept.verdict).toMatch(/lie as they lay/);
  expect(valueOf(await ask(service, 'GET', `/api/plans/${kept.id}`))).toEqual(kept);

  // The same wish without that is planned anew, and is what the kept plan names.
  const body = { pad: plan.pad, cards, pins, from: plan.id };
  const anew = valueOf<Plans.Plan>(await ask(service, 'POST', '/api/plans', body));
  expect(anew.otherwise).toBeUndefined();
  expect(anew.value).toBeCloseTo(kept.value + otherwise!.gain, 9);
  const changed = kept.cards.filter(
    ({ layers }, n) => JSON.stringify(layers) !== JSON.stringify(anew.cards[n]!.layers),
  );
  expect(otherwise!.cards).toEqual(changed.map(({ number }) => number));
  const { slots } = otherwise!;
  const taken = await ask(service, 'POST', `/api/plans/${kept.id}/taken`, { slots });
  const had = valueOf<Plans.Plan>(taken);
  expect(had.otherwise).toBeUndefined();
  expect(had.value).toBeCloseTo(anew.value, 9);
  expect(had.proven).toBe(anew.proven);

  // A wish that is not about papers of cards is planned for all.
  const other = { ...body, from: kept.id, keepOthers: true, taste: { busy: 1 } };
  const tasted = valueOf<Plans.Plan>(await ask(service, 'POST', '/api/plans', other));
  expect(tasted.otherwise).toBeUndefined();
});

interface Kept {
  readonly kept: Plans.Plan;
  readonly pins: readonly Plans.Pin[];
}

/** The first wish for another paper that leaves cards as they lie though a better plan is known. */
async function wishKept(service: Mounted, plan: Plans.Plan): Promise<Kept | null> {
  for (const { id, number, layers } of plan.cards)
    for (const { layer } of layers.filter(({ side }) => side !== undefined)) {
      const asked = `/api/plans/${plan.id}/cards/${id}/layers/${layer}/choices`;
      const { choices } = valueOf<{ choices: Again.LayerChoice[] }>(
        await ask(service, 'GET', asked),
      );
      for (const { side, allowed, now } of choices) {
        if (side === undefined || !allowed || now) continue;
        const pins = [{ card: number, layer, side }];
        const { cards } = plan.asked;
        const body = { pad: plan.pad, cards, pins, from: plan.id, keepOthers: true };
        const kept = valueOf<Plans.Plan>(await ask(service, 'POST', '/api/plans', body));
        if (kept.otherwise !== undefined) return { kept, pins };
      }
    }
  return null;
}
