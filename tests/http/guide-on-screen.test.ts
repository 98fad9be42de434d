import { describe, expect, test } from 'vitest';
import type * as Plans from '../../server/contract/plans.ts';
import type * as Guides from '../../server/contract/plan-guides.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan, problemIn, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

describe('the guide on a screen', () => {
  test('says every sheet with its cuts numbered from 1, and draws each', async () => {
    const { service, plan } = await planned();
    const { slots } = valueOf<Guides.PlanCuts>(
      await ask(service, 'GET', `/api/plans/${plan.id}/cuts?ruler=in`),
    );
    expect(slots.map(({ slot, sheet }) => ({ slot, sheet }))).toEqual(
      plan.sheetsUsed.map(({ slot, sheet }) => ({ slot, sheet })),
    );
    for (const { steps, laying, picture } of slots) {
      expect(steps.map(({ number }) => number)).toEqual(steps.map((_, at) => at + 1));
      expect(steps[0]!.main).toMatch(/ in\b/);
      expect(laying).toMatch(/^Lay the (front|back) up/);
      const drawing = await ask(service, 'GET', picture);
      expect(drawing.headers['content-type']).toMatch(/^image\/svg\+xml/);
      expect(drawing.headers['content-security-policy']).toMatch(/sandbox/);
      // The paper lies inside, so that the drawing stands by itself.
      expect(drawing.payload).toContain('data:image/jpeg;base64,');
      for (const { number } of steps) expect(drawing.payload).toContain(`>${number}</text>`);
    }
  });

  test('no such slot is not found', async () => {
    const { service, plan } = await planned();
    const answer = await ask(service, 'GET', `/api/plans/${plan.id}/slots/none.svg`);
    expect(problemIn(answer).status).toBe(404);
  });

  test('says every cardstock with its cuts, and every card with its layers in the order of gluing', async () => {
    const { service, plan } = await planned();
    const guide = valueOf<Guides.PlanGuide>(
      await ask(service, 'GET', `/api/plans/${plan.id}/guide?ruler=in`),
    );
    expect(guide.cautions.join(' ')).toMatch(/not a measurement.*blade.*local rules/);
    expect(guide.cards.map(({ number }) => number)).toEqual(plan.cards.map(({ number }) => number));
    for (const { layers, label, number } of guide.cards) {
      const planned = plan.cards.find((card) => card.number === number)!;
      expect(layers.map(({ layer }) => layer)).toEqual(planned.layers.map(({ layer }) => layer));
      expect(layers.map(({ side }) => side)).toEqual(
        planned.layers.map(({ side }) => side ?? null),
      );
      expect(label.patterned + label.plain).toBe(layers.length);
    }
    const plain = guide.cards.flatMap(({ layers }) => layers.filter(({ side }) => side === null));
    const pieces = guide.cardstock.flatMap((stock) => stock.pieces);
    expect(pieces.reduce((sum, { count }) => sum + count, 0)).toBe(plain.length);
    const stocks = guide.takes.of.filter(({ kind }) => kind === 'cardstock');
    expect(stocks.map(({ name, toBuy }) => ({ name, toBuy }))).toEqual(
      guide.cardstock.map(({ name, toBuy }) => ({ name, toBuy })),
    );
    for (const [at, { said }] of stocks.entries()) {
      const { sheets, size } = guide.cardstock[at]!.takes!;
      expect(said).toContain(`${sheets} ${sheets === 1 ? 'sheet' : 'sheets'} of ${size}`);
    }
    expect(guide.takes.said).toMatch(/is to buy/);
    const bought = guide.shopping.flatMap(({ cards }) => cards);
    expect(bought.length > 0).toBe(guide.cardstock.some(({ toBuy }) => toBuy));
    for (const { id, picture, steps } of guide.cardstock.flatMap(({ sheets }) => sheets)) {
      expect(id).toMatch(/^\d+-\d+$/);
      const drawing = await ask(service, 'GET', picture);
      expect(drawing.headers['content-type']).toMatch(/^image\/svg\+xml/);
      for (const { number } of steps) expect(drawing.payload).toContain(`>${number}</text>`);
    }
    const none = await ask(service, 'GET', `/api/plans/${plan.id}/cardstock/9-9.svg`);
    expect(problemIn(none).status).toBe(404);
  });

  test('ticks are kept once each, told to who watches the pad, and taken back', async () => {
    const { service, plan } = await planned();
    const way = `/api/plans/${plan.id}/ticks`;
    const told: string[] = [];
    service.edges.changes.watch(plan.pad, () => told.push('told'));
    const tick = (step: string, done: boolean): ReturnType<typeof ask> =>
      ask(service, 'POST', way, { step, done });
    await tick('card-1', true);
    await tick('card-1', true);
    expect(valueOf(await tick('card-2', true))).toEqual({ ticks: ['card-1', 'card-2'] });
    expect(valueOf(await tick('card-1', false))).toEqual({ ticks: ['card-2'] });
    expect(valueOf(await ask(service, 'GET', way))).toEqual({ ticks: ['card-2'] });
    expect(told).toHaveLength(4);
    await ask(service, 'DELETE', `/api/plans/${plan.id}`);
    expect((await ask(service, 'GET', way)).statusCode).toBe(404);
  });

  test('a plan says what was wished and which one it changed; of another pad it is refused', async () => {
    const { service, plan, pad } = await planned();
    const wish = { ...plan.asked, taste: { contrast: 1, busy: 0, bold: 0 }, from: plan.id };
    const next = valueOf<Plans.Plan>(await ask(service, 'POST', '/api/plans', wish));
    expect(next.asked).toEqual(wish);
    const { plans } = valueOf<{ plans: Plans.PlanSummary[] }>(
      await ask(service, 'GET', `/api/plans?pad=${pad}`),
    );
    expect(plans.map(({ id, from }) => [id, from])).toEqual([
      [plan.id, null],
      [next.id, plan.id],
    ]);
    const other = await filledPad(service);
    const strange = await ask(service, 'POST', '/api/plans', { ...wish, pad: other.id });
    expect(problemIn(strange)).toMatchObject({ status: 404, field: 'from' });
  });
});

async function planned(): Promise<{ service: Mounted; plan: Plans.Plan; pad: string }> {
  const service = await mount(await newFolder());
  const pad = await filledPad(service);
  return { service, plan: await newPlan(service, pad.id), pad: pad.id };
}
