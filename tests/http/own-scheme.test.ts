import { describe, expect, test } from 'vitest';
import type { Plan } from '../../server/contract/plans.ts';
import type { PlanCuts } from '../../server/contract/plan-guides.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, problemIn, valueOf } from './mount.ts';

describe('a plan with her own scheme', () => {
  test('has her slots with her pieces, and cuts for them', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const wish = { pad: pad.id, cards: [{ layout: 'waistband-us', count: 2 }] };
    const usual = valueOf<Plan>(await ask(service, 'POST', '/api/plans', wish));
    const papered = usual.cards[0]!.layers.filter(({ sheet }) => sheet !== undefined);
    const scheme = usual.cards.flatMap(({ number }) =>
      papered.map(({ layer }) => ({
        slot: `own-${number}-${layer}`,
        pieces: [{ card: number, layer }],
      })),
    );
    const answer = await ask(service, 'POST', '/api/plans', { ...wish, scheme });
    expect(answer.statusCode).toBe(201);
    const plan = valueOf<Plan>(answer);
    expect(plan.asked.scheme).toEqual(scheme);
    expect(plan.sheetsUsed.map(({ slot, cards }) => [slot, cards])).toEqual(
      scheme.map(({ slot, pieces }) => [slot, [pieces[0]!.card]]),
    );
    const { slots } = valueOf<PlanCuts>(await ask(service, 'GET', `/api/plans/${plan.id}/cuts`));
    // They come in the order of the sheets' numbers.
    expect(slots.map(({ slot }) => slot).sort()).toEqual(scheme.map(({ slot }) => slot).sort());
    for (const { steps } of slots) expect(steps.length).toBeGreaterThan(0);

    const short = { ...wish, scheme: scheme.slice(1) };
    const refused = problemIn(await ask(service, 'POST', '/api/plans', short));
    expect(refused).toMatchObject({ status: 422, field: 'scheme' });
    expect(refused.detail).toContain(`"${papered[0]!.layer}" to card 1`);
    const both = problemIn(
      await ask(service, 'POST', '/api/plans', { ...wish, scheme, sheets: 4 }),
    );
    expect(both).toMatchObject({ status: 409, field: 'sheets' });
  });
});
