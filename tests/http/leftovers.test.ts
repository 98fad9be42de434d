import { describe, expect, test } from 'vitest';
import { LeftoverList } from '../../server/contract/leftovers.ts';
import type { Plan } from '../../server/contract/plans.ts';
import type { PlanCuts } from '../../server/contract/plan-guides.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, problemIn, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

async function stockOf(service: Mounted, pad: string, query = ''): Promise<LeftoverList> {
  const answer = await ask(service, 'GET', `/api/pads/${pad}/leftovers${query}`);
  return LeftoverList.parse(valueOf(answer));
}

async function planOn(service: Mounted, pad: string): Promise<Plan> {
  const cards = [{ layout: 'waistband-us', count: 2 }];
  return valueOf<Plan>(await ask(service, 'POST', '/api/plans', { pad, cards }));
}

describe('left-overs', () => {
  test('of a plan are kept once, as its guide lists them, and can be deleted', async () => {
    const folder = await newFolder();
    const service = await mount(folder);
    const pad = await filledPad(service);
    const plan = await planOn(service, pad.id);
    const way = `/api/pads/${pad.id}/leftovers`;
    const { slots } = valueOf<PlanCuts>(await ask(service, 'GET', `/api/plans/${plan.id}/cuts`));
    const left = slots.filter((slot) => slot.left.length > 0).map(({ sheet }) => sheet);
    expect(left.length).toBeGreaterThan(0);
    expect((await ask(service, 'POST', way, { plan: plan.id })).statusCode).toBe(201);
    const { leftovers } = await stockOf(service, pad.id);
    expect(new Set(leftovers.map(({ sheet }) => sheet))).toEqual(new Set(left));
    const again = await ask(service, 'POST', way, { plan: plan.id });
    expect(problemIn(again)).toMatchObject({ status: 409, field: 'plan' });
    const gone = leftovers[0]!.id;
    expect((await ask(service, 'DELETE', `${way}/${gone}`)).statusCode).toBe(204);
    expect(problemIn(await ask(service, 'DELETE', `${way}/${gone}`)).status).toBe(404);
    await service.stop();
    const later = await mount(folder);
    expect((await stockOf(later, pad.id)).leftovers).toEqual(leftovers.slice(1));
  });

  test('are kept once of one work, whichever plan of it keeps them, and no stock of it', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const plan = await planOn(service, pad.id);
    const way = `/api/pads/${pad.id}/leftovers`;
    await ask(service, 'POST', way, { plan: plan.id });
    const stock = (await stockOf(service, pad.id)).leftovers;
    const card = plan.cards[0]!;
    const lies = card.layers.find((layer) => layer.side !== undefined)!;
    const pins = [{ card: card.number, layer: lies.layer, side: lies.side }];
    const cards = [{ layout: 'waistband-us', count: 2 }];
    const asked = { pad: pad.id, cards, pins, from: plan.id, keepOthers: true };
    const pinned = valueOf<Plan>(await ask(service, 'POST', '/api/plans', asked));
    expect(pinned.cards.map(({ layers }) => layers)).toEqual(
      plan.cards.map(({ layers }) => layers),
    );
    const again = await ask(service, 'POST', way, { plan: pinned.id });
    expect(problemIn(again)).toMatchObject({ status: 409, field: 'plan' });
    const seen = await stockOf(service, pad.id, `?plan=${pinned.id}`);
    expect(seen).toMatchObject({ pieces: [], spared: [] });
    expect(seen.leftovers.map(({ plan: of }) => of)).toEqual(stock.map(() => pinned.id));
    expect((await stockOf(service, pad.id)).leftovers).toEqual(stock);
    // The same cards chosen anew are another batch, of other sheets.
    const next = valueOf<Plan>(
      await ask(service, 'POST', '/api/plans', { pad: pad.id, cards, from: plan.id, anew: true }),
    );
    expect((await ask(service, 'POST', way, { plan: next.id })).statusCode).toBe(201);
  });

  test('serve the next plan: a piece that fits is named, and the sheet it spares', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const plan = await planOn(service, pad.id);
    expect(await stockOf(service, pad.id, `?plan=${plan.id}`)).toMatchObject({ pieces: [] });
    const { sheet, slot } = plan.sheetsUsed[0]!;
    const whole = { sheet, size: pad.sheetSize };
    await ask(service, 'POST', `/api/pads/${pad.id}/leftovers`, whole);
    const { pieces, leftovers } = await stockOf(service, pad.id, `?plan=${plan.id}`);
    expect(pieces).toMatchObject([{ leftover: leftovers[0]!.id, slot }]);
  });

  test('of which all pieces of a sheet come are used up with the plan, and that sheet leaves nothing', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const plan = await planOn(service, pad.id);
    const way = `/api/pads/${pad.id}/leftovers`;
    const { slots } = valueOf<PlanCuts>(await ask(service, 'GET', `/api/plans/${plan.id}/cuts`));
    const { slot, sheet, pieces } = slots.find(({ left }) => left.length > 0)!;
    const whole = { sheet, size: pad.sheetSize };
    await ask(service, 'PATCH', `/api/sheets/${sheet}`, { copies: pieces.length });
    await Promise.all(pieces.map(() => ask(service, 'POST', way, whole)));
    expect((await stockOf(service, pad.id, `?plan=${plan.id}`)).spared).toEqual([slot]);
    await ask(service, 'POST', way, { plan: plan.id });
    const { leftovers, spared } = await stockOf(service, pad.id, `?plan=${plan.id}`);
    expect(leftovers.every((part) => part.plan === plan.id)).toBe(true);
    expect(leftovers.map((part) => part.sheet)).not.toContain(sheet);
    expect(spared).toEqual([]);
  });

  test('are named by the cuts: no sheet is to be cut with one that they spare, but for several people', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const cards = [{ layout: 'waistband-us', count: 4 }];
    const plan = valueOf<Plan>(await ask(service, 'POST', '/api/plans', { pad: pad.id, cards }));
    const cutsNow = async (query = ''): Promise<PlanCuts> =>
      valueOf(await ask(service, 'GET', `/api/plans/${plan.id}/cuts${query}`));
    const before = await cutsNow();
    const { slot, sheet, name, pieces } = before.slots.find(({ laying }) =>
      laying.includes('Cut alike'),
    )!;
    const named = new RegExp(`Cut alike:.*\\b${/\d+/.exec(name)![0]}\\b`);
    expect(before.slots.filter((one) => named.test(one.laying))).not.toEqual([]);
    await ask(service, 'PATCH', `/api/sheets/${sheet}`, { copies: pieces.length + 1 });
    const whole = { sheet, size: pad.sheetSize };
    await Promise.all(
      pieces.map(() => ask(service, 'POST', `/api/pads/${pad.id}/leftovers`, whole)),
    );
    expect((await stockOf(service, pad.id, `?plan=${plan.id}`)).spared).toEqual([slot]);
    const after = await cutsNow();
    expect(after.slots.filter((one) => named.test(one.laying))).toEqual([]);
    expect(after.slots.find((one) => one.slot === slot)!.laying).not.toContain('Cut alike');
    expect(await cutsNow('?people=3')).toEqual(before);
  });

  test('one larger than its sheet, or of no sheet of the pad, is refused', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const way = `/api/pads/${pad.id}/leftovers`;
    const { id: sheet } = pad.sheets[0]!;
    const large = { sheet, size: { width: '7 in', height: '2 in' } };
    expect(problemIn(await ask(service, 'POST', way, large))).toMatchObject({
      status: 422,
      field: 'size',
    });
    const none = { sheet: 'none', size: { width: '2 in', height: '2 in' } };
    expect(problemIn(await ask(service, 'POST', way, none))).toMatchObject({
      status: 404,
      field: 'sheet',
    });
  });

  test('that are together more than the sheets of which they are said to be are refused', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const way = `/api/pads/${pad.id}/leftovers`;
    const { id: sheet } = pad.sheets[0]!;
    const half = { sheet, size: { width: '6 in', height: '3 in' } };
    for (const status of [201, 201]) {
      const answer = await ask(service, 'POST', way, half);
      expect(answer.statusCode).toBe(status);
    }
    const scrap = { sheet, size: { width: '1 in', height: '1 in' } };
    expect(problemIn(await ask(service, 'POST', way, scrap))).toMatchObject({
      status: 422,
      field: 'size',
    });
    await ask(service, 'PATCH', `/api/sheets/${sheet}`, { copies: 2 });
    expect((await ask(service, 'POST', way, scrap)).statusCode).toBe(201);
    const other = { ...scrap, sheet: pad.sheets[1]!.id };
    expect((await ask(service, 'POST', way, other)).statusCode).toBe(201);
  });

  test('go along with the pad, to another Plyhue', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const part = { sheet: pad.sheets[1]!.id, size: { width: '2 in', height: '3 in' } };
    await ask(service, 'POST', `/api/pads/${pad.id}/leftovers`, part);
    const file = (await ask(service, 'GET', `/api/pads/${pad.id}/file`)).rawPayload;
    const other = await mount(await newFolder());
    const headers = { 'content-type': 'application/x-tar' };
    const taken = await ask(other, 'POST', '/api/pad-files', file, headers);
    expect(taken.statusCode).toBe(201);
    expect(await stockOf(other, pad.id)).toEqual(await stockOf(service, pad.id));
  });
});
