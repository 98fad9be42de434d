import { describe, expect, test } from 'vitest';
import type { LayoutListing } from '../../server/contract/layouts.ts';
import type { Plan, PlanSummary } from '../../server/contract/plans.ts';
import { newFolder } from '../store/folder.ts';
import { papers } from './fake-desk.ts';
import { ask, filledPad, mount, newPad, newPlan, problemIn, sendPhoto, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

async function layoutsOf(service: Mounted): Promise<LayoutListing[]> {
  return valueOf<{ layouts: LayoutListing[] }>(await ask(service, 'GET', '/api/layouts')).layouts;
}

/** A layout of hers, drawn as our first one is, and its first layer of patterned paper. */
async function ownLayout(service: Mounted): Promise<{
  readonly id: string;
  readonly layer: string;
  readonly drawn: Pick<LayoutListing, 'name' | 'card' | 'fold' | 'layers'>;
}> {
  const { name, card, fold, layers } = (await layoutsOf(service))[0]!;
  const drawn = { name, card, fold, layers };
  const { id } = valueOf<{ id: string }>(await ask(service, 'POST', '/api/layouts', drawn));
  return { id, layer: layers.find(({ material }) => material === 'patterned')!.id, drawn };
}

describe('plans', () => {
  test('each layer of each card has a paper of the pad, or a cardstock', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const layouts = await layoutsOf(service);
    const cards = layouts.slice(0, 3).map(({ id }) => ({ layout: id, count: 2 }));
    const answer = await ask(service, 'POST', '/api/plans', { pad: pad.id, cards });
    const plan = valueOf<Plan>(answer);
    expect(answer.statusCode).toBe(201);
    expect(answer.headers.location).toBe(`/api/plans/${plan.id}`);
    expect(plan.cards.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6]);
    const sides = pad.sheets.flatMap(({ id, front, back }) => [
      `${id} ${front!.id}`,
      `${id} ${back!.id}`,
    ]);
    for (const card of plan.cards) {
      const layout = layouts.find(({ id }) => id === card.layout)!;
      expect(card.layers.map(({ layer }) => layer).sort()).toEqual(
        layout.layers.map(({ id }) => id).sort(),
      );
      for (const layer of card.layers) {
        const { material } = layout.layers.find(({ id }) => id === layer.layer)!;
        if (material === 'patterned') expect(sides).toContain(`${layer.sheet} ${layer.side}`);
        else expect(layer.supply ?? layer.wanted).toBeDefined();
        expect(layer.size).toMatch(/^.+ (in|mm) x .+ (in|mm)$/);
      }
      expect(card.why).toMatch(/\w/);
    }
    expect(plan.value).toBeLessThanOrEqual(plan.bound + 1e-9);
    expect(plan.sheetsUsed.length).toBeGreaterThanOrEqual(plan.fewestSheets);
    expect(valueOf(await ask(service, 'GET', `/api/plans/${plan.id}`))).toEqual(plan);
  });

  test('her own cardstock is used, and named by its id', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const supply = { kind: 'cardstock', name: 'Shell', colour: { lab: [92, 1, 6] } };
    await ask(service, 'POST', '/api/supplies', supply);
    const plan = await newPlan(service, pad.id);
    const used = plan.cards.flatMap(({ layers }) => layers.flatMap(({ supply: id }) => id ?? []));
    expect(used.length).toBeGreaterThan(0);
  });

  test('a pin is honoured', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const layout = (await layoutsOf(service))[0]!;
    const { id: layer } = layout.layers.find(({ material }) => material === 'patterned')!;
    const sheet = pad.sheets[4]!;
    const answer = await ask(service, 'POST', '/api/plans', {
      pad: pad.id,
      cards: [{ layout: layout.id, count: 1 }],
      pins: [{ card: 1, layer, side: sheet.back!.id }],
    });
    const made = valueOf<Plan>(answer).cards[0]!.layers.find((each) => each.layer === layer)!;
    expect(made).toMatchObject({ sheet: sheet.id, side: sheet.back!.id });
  });

  test('a pin is honoured after its layer was called otherwise, and the plan says her name for it', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const { id, layer, drawn } = await ownLayout(service);
    const wish = {
      pad: pad.id,
      cards: [{ layout: id, count: 1 }],
      pins: [{ card: 1, layer, side: pad.sheets[4]!.back!.id }],
    };
    expect((await ask(service, 'POST', '/api/plans', wish)).statusCode).toBe(201);
    const names = new Map([
      [layer, 'Top strip'],
      ['greeting', 'Good wishes'],
    ]);
    const called = drawn.layers.map((one) => ({ ...one, called: names.get(one.id) }));
    await ask(service, 'PUT', `/api/layouts/${id}`, { ...drawn, name: 'Other', layers: called });
    const again = await ask(service, 'POST', '/api/plans', wish);
    expect(again.statusCode).toBe(201);
    const { cards } = valueOf<Plan>(again);
    const made = cards[0]!.layers.find((each) => each.layer === layer)!;
    expect(made).toMatchObject({ called: 'Top strip', side: wish.pins[0]!.side });
    expect(cards[0]!.reasons.map(({ text }) => text).join(' ')).toContain('The Good wishes');
  });

  test('a layout that was deleted stays in the plan that is changed; a new plan of it is told what to do', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const { id, layer } = await ownLayout(service);
    const wish = { pad: pad.id, cards: [{ layout: id, count: 1 }] };
    const plan = valueOf<Plan>(await ask(service, 'POST', '/api/plans', wish));
    await ask(service, 'DELETE', `/api/layouts/${id}`);
    const pins = [{ card: 1, layer, side: pad.sheets[4]!.back!.id }];
    const changed = await ask(service, 'POST', '/api/plans', { ...wish, pins, from: plan.id });
    expect(changed.statusCode).toBe(201);
    const { cards } = valueOf<Plan>(changed);
    expect(cards[0]!.layers.find((each) => each.layer === layer)).toMatchObject({
      side: pins[0]!.side,
    });
    const fresh = problemIn(await ask(service, 'POST', '/api/plans', { ...wish, pins }));
    expect(fresh).toMatchObject({ status: 404, field: 'cards[0].layout' });
    expect(fresh.mend).toMatch(/choose another layout under Cards, or draw it again/);
  });

  test('a pin on a layer that its layout has no more names the layers that there are', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const layout = (await layoutsOf(service))[0]!;
    const answer = await ask(service, 'POST', '/api/plans', {
      pad: pad.id,
      cards: [{ layout: layout.id, count: 1 }],
      pins: [{ card: 1, layer: 'strip-9', side: pad.sheets[4]!.back!.id }],
    });
    const { status, field, mend } = problemIn(answer);
    expect([status, field]).toEqual([404, 'pins[0].layer']);
    expect(mend).toMatch(/take this wish back, .*\(base, .*panel.* and greeting\)/);
  });

  test('are listed for their pad, and can be deleted', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const plan = await newPlan(service, pad.id);
    const listed = async (of: string): Promise<PlanSummary[]> =>
      valueOf<{ plans: PlanSummary[] }>(await ask(service, 'GET', `/api/plans?pad=${of}`)).plans;
    expect(await listed(pad.id)).toMatchObject([{ id: plan.id, cards: 3, value: plan.value }]);
    expect(await listed('other')).toEqual([]);
    expect((await ask(service, 'DELETE', `/api/plans/${plan.id}`)).statusCode).toBe(204);
    const gone = await ask(service, 'GET', `/api/plans/${plan.id}`);
    expect(problemIn(gone)).toMatchObject({ status: 404, field: 'plan' });
  });

  test('a card is drawn with the swatches that it is cut from', async () => {
    const service = await mount(await newFolder());
    const plan = await newPlan(service, (await filledPad(service)).id);
    const png = await ask(service, 'GET', plan.cards[0]!.picture);
    expect(png.statusCode).toBe(200);
    expect(png.headers['content-type']).toBe('image/png');
    const svg = await ask(service, 'GET', plan.cards[0]!.picture.replace('.png', '.svg'));
    expect(svg.headers['content-type']).toMatch(/^image\/svg\+xml/);
    expect(svg.headers['content-security-policy']).toMatch(/default-src 'none'.*sandbox/);
    const side = plan.cards[0]!.layers.find((layer) => layer.side !== undefined)!.side!;
    const { swatch } = (await service.edges.store.read.sides.at(side))!;
    const bytes = await service.edges.store.files.read('swatches', swatch);
    expect(svg.payload).toContain(bytes.toString('base64'));
    const none = await ask(service, 'GET', `/api/plans/${plan.id}/cards/card-99.png`);
    expect(problemIn(none)).toMatchObject({ status: 404, field: 'card' });
  });

  test('the guide comes as a PDF in the paper asked for, the same bytes each time', async () => {
    const service = await mount(await newFolder());
    const plan = await newPlan(service, (await filledPad(service)).id);
    const guide = async (wish: string): Promise<string> => {
      const answer = await ask(service, 'GET', `${plan.guide}${wish}`);
      expect(answer.headers['content-type']).toBe('application/pdf');
      return answer.rawPayload.toString('latin1');
    };
    const letter = await guide('');
    expect(letter).toMatch(/^%PDF-1\./);
    // US letter is 8 1/2 x 11 in (ANSI/ASME Y14.1), A4 210 x 297 mm (ISO 216); a point is 1/72 in.
    expect(letter).toMatch(/\/MediaBox \[0 0 612(\.0+)? 792(\.0+)?\]/);
    expect(await guide('?paper=a4&ruler=mm')).toMatch(/\/MediaBox \[0 0 595\.2\d* 841\.8\d*\]/);
    expect(await guide('')).toBe(letter);
    const wrong = await ask(service, 'GET', `${plan.guide}?paper=a3`);
    expect(problemIn(wrong)).toMatchObject({ status: 400, field: 'paper', received: 'a3' });
  });

  test('stay as they were when a photo is deleted, also after the sweep of a restart', async () => {
    const folder = await newFolder();
    const service = await mount(folder);
    const pad = await filledPad(service);
    const plan = await newPlan(service, pad.id);
    const picture = plan.cards[0]!.picture.replace('.png', '.svg');
    const before = (await ask(service, 'GET', picture)).payload;
    for (const { id } of pad.photos) await ask(service, 'DELETE', `/api/photos/${id}`);
    await service.stop();
    const again = await mount(folder);
    expect(valueOf(await ask(again, 'GET', `/api/plans/${plan.id}`))).toEqual(plan);
    expect((await ask(again, 'GET', picture)).payload).toBe(before);
  });

  test.each([
    ['no such pad', { pad: 'none' }, 404, 'pad'],
    ['no such layout', { cards: [{ layout: 'none', count: 1 }] }, 404, 'cards[0].layout'],
    ['no cards', { cards: [] }, 400, 'cards'],
    ['a count of nought', { cards: [{ layout: 'x', count: 0 }] }, 400, 'cards[0].count'],
    ['a pin on no card', { pins: [{ card: 9, layer: 'base' }] }, 404, 'pins[0].card'],
    ['a pin on no layer', { pins: [{ card: 1, layer: 'none' }] }, 404, 'pins[0].layer'],
    ['without no such sheet', { without: ['none'] }, 404, 'without[0]'],
    ['taste beyond', { taste: { bold: 4 } }, 400, 'taste.bold'],
  ])('%s is refused with its field', async (_, change, status, field) => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const layout = (await layoutsOf(service))[0]!.id;
    const wish = { pad: pad.id, cards: [{ layout, count: 1 }], ...change };
    const problem = problemIn(await ask(service, 'POST', '/api/plans', wish));
    expect([problem.status, problem.field]).toEqual([status, field]);
  });

  test('too many cards, a pad without sheets, more cards than sheets: each has its mend', async () => {
    const service = await mount(await newFolder());
    const layout = (await layoutsOf(service))[0]!.id;
    const empty = await newPad(service);
    const wish = (pad: string, count: number): Promise<Awaited<ReturnType<typeof ask>>> =>
      ask(service, 'POST', '/api/plans', { pad, cards: Array(4).fill({ layout, count }) });
    expect(problemIn(await wish(empty, 1))).toMatchObject({ status: 422, field: 'pad' });
    await sendPhoto(service, empty, 'front', { papers: papers(1) });
    expect(problemIn(await wish(empty, 60))).toMatchObject({ status: 413, field: 'cards' });
    const few = problemIn(await wish(empty, 12));
    expect(few.status).toBe(422);
    expect(few.mend).toMatch(/\w/);
  });

  test('the same wish with the same Idempotency-Key makes one plan', async () => {
    const service = await mount(await newFolder());
    const pad = (await filledPad(service)).id;
    const cards = [{ layout: (await layoutsOf(service))[0]!.id, count: 2 }];
    const key = { 'idempotency-key': 'plan-1' };
    const answers = await Promise.all(
      [1, 2].map(() => ask(service, 'POST', '/api/plans', { pad, cards }, key)),
    );
    const [one, two] = answers.map((answer) => valueOf<Plan>(answer));
    expect(two).toEqual(one);
  });
});
