import { describe, expect, test } from 'vitest';
import type { LayoutListing } from '../../server/contract/layouts.ts';
import type * as Plans from '../../server/contract/plans.ts';
import type * as Again from '../../server/contract/plans-again.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan, problemIn, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

describe('what else a plan could be', () => {
  test('the next three plans differ in a slot, are worth no more than the best, and can be had', async () => {
    const { service, plan } = await planned();
    const { others } = valueOf<{ others: Again.OtherPlan[] }>(
      await ask(service, 'GET', `/api/plans/${plan.id}/others?count=3`),
    );
    expect(others).toHaveLength(3);
    let last = plan.value;
    for (const other of others) {
      expect(other.value).toBeLessThanOrEqual(last + 1e-9);
      expect(other.gain).toBeCloseTo(other.value - plan.value, 9);
      expect(other.swaps.length).toBeGreaterThan(0);
      for (const { slot, from, to, cards } of other.swaps) {
        expect(slots(plan)[slot]).toBe(from);
        expect(other.slots[slot]).toBe(to);
        expect(cards.length).toBeGreaterThan(0);
      }
      expect(other.changes[0]).toMatch(/ instead of /);
      const changed = other.pictures.map(({ card }) => card);
      expect(changed.length).toBeGreaterThan(0);
      for (const { cards } of other.swaps) expect(changed).toEqual(expect.arrayContaining(cards));
      last = other.value;
    }
    const taken = await ask(service, 'POST', `/api/plans/${plan.id}/taken`, {
      slots: others[1]!.slots,
    });
    const had = valueOf<Plans.Plan>(taken);
    expect(taken.statusCode).toBe(201);
    expect(had.id).not.toBe(plan.id);
    expect(slots(had)).toEqual(others[1]!.slots);
    expect(had.value).toBeCloseTo(others[1]!.value, 9);
    expect(had.bound).toBeGreaterThanOrEqual(had.value);
    expect(valueOf(await ask(service, 'GET', `/api/plans/${had.id}`))).toEqual(had);
    expect((await ask(service, 'GET', had.cards[0]!.picture)).statusCode).toBe(200);
    const { card, picture } = others[1]!.pictures[0]!;
    const offered = await ask(service, 'GET', picture);
    const made = had.cards.find(({ number }) => number === card)!.picture;
    const asTaken = await ask(service, 'GET', made.replace('.png', '.svg'));
    expect(offered.headers['content-type']).toContain('image/svg+xml');
    expect(offered.body).toBe(asTaken.body);
    const before = plan.cards.find(({ number }) => number === card)!.picture;
    const asItWas = await ask(service, 'GET', before.replace('.png', '.svg'));
    expect(offered.body).not.toBe(asItWas.body);
    const odd = await ask(service, 'GET', picture.replace(/sheets=.*/, 'sheets=nobody'));
    expect(problemIn(odd).status).toBe(404);
  });

  test('the same taking twice with one Idempotency-Key makes one plan', async () => {
    const { service, plan } = await planned();
    const body = { slots: slots(plan) };
    const key = { 'idempotency-key': 'take-1' };
    const take = (): ReturnType<typeof ask> =>
      ask(service, 'POST', `/api/plans/${plan.id}/taken`, body, key);
    const [one, two] = [await take(), await take()];
    expect(valueOf<Plans.Plan>(two).id).toBe(valueOf<Plans.Plan>(one).id);
  });

  test('a plan made of another brings the drawings of the cards that it makes otherwise, where they are asked for', async () => {
    const { service, plan } = await planned();
    const drawn = async (of: Plans.Plan, number: number): Promise<string> => {
      const { picture } = of.cards.find((card) => card.number === number)!;
      const beside = `${picture.replace('.png', '.svg')}?papers=beside`;
      return (await ask(service, 'GET', beside)).payload;
    };
    const gone = plan.sheetsUsed[0]!.sheet;
    const wish = { ...WISH(plan), without: [gone], from: plan.id };
    const wished = await ask(service, 'POST', '/api/plans?drawings=changed', wish);
    const taken = await ask(service, 'POST', `/api/plans/${plan.id}/taken?drawings=changed`, {
      slots: slots(valueOf<Plans.Plan>(wished)),
    });
    for (const made of [wished, taken].map((answer) => valueOf<Plans.Plan>(answer))) {
      expect(made.cards.some(({ drawing }) => drawing !== undefined)).toBe(true);
      for (const { number, drawing, same } of made.cards) {
        expect(same).toBe(drawing === undefined ? true : undefined);
        const now = await drawn(made, number);
        expect(drawing ?? (await drawn(plan, number))).toBe(now);
      }
      // They come along once and are not part of the plan.
      const asked = valueOf<Plans.Plan>(await ask(service, 'GET', `/api/plans/${made.id}`));
      for (const card of asked.cards) {
        expect(card).not.toHaveProperty('drawing');
        expect(card).not.toHaveProperty('same');
      }
    }
    const bare = valueOf<Plans.Plan>(await ask(service, 'POST', '/api/plans', wish));
    const first = valueOf<Plans.Plan>(
      await ask(service, 'POST', '/api/plans?drawings=changed', WISH(plan)),
    );
    for (const { drawing, same } of [...bare.cards, ...first.cards])
      expect([drawing, same]).toEqual([undefined, undefined]);
  });

  test('without a sheet of it the plan is another, worth no more, and does not use it', async () => {
    const { service, plan } = await planned();
    const gone = plan.sheetsUsed[0]!.sheet;
    const other = valueOf<Again.OtherPlan>(
      await ask(service, 'GET', `/api/plans/${plan.id}/without/${gone}`),
    );
    expect(Object.values(other.slots)).not.toContain(gone);
    expect(other.gain).toBeLessThanOrEqual(1e-9);
    const left = valueOf<Plans.Plan>(
      await ask(service, 'POST', '/api/plans', { ...WISH(plan), without: [gone] }),
    );
    expect(left.value).toBeCloseTo(other.value, 6);
    const unknown = await ask(service, 'GET', `/api/plans/${plan.id}/without/nobody`);
    expect(problemIn(unknown)).toMatchObject({ status: 404, field: 'sheet' });
  });

  test('the weakest card is the one of the lowest score, and a sheet that mends it says where it goes', async () => {
    const { service, plan } = await planned();
    const weakest = valueOf<Again.Weakest>(
      await ask(service, 'GET', `/api/plans/${plan.id}/weakest`),
    );
    const scores = plan.cards.map(({ score }) => score);
    expect(weakest.score).toBeCloseTo(Math.min(...scores), 9);
    expect(plan.cards.find(({ number }) => number === weakest.card)!.score).toBe(weakest.score);
    for (const mend of weakest.mends) {
      expect(mend.card).toBeGreaterThan(0);
      if (mend.swap !== undefined) expect(slots(plan)[mend.swap.slot]).toBe(mend.swap.from);
    }
  });

  test('what fewer sheets cost: more sheets are worth more, and a plan of so many can be had', async () => {
    const { service, plan } = await planned();
    const curve = async (): Promise<Again.SheetCurve> =>
      valueOf<Again.SheetCurve>(await ask(service, 'GET', `/api/plans/${plan.id}/curve`));
    const { sheetsUsed, value } = plan;
    const itself = { sheets: sheetsUsed.length, value, part: 1, bound: plan.cards.length };
    expect(await curve()).toEqual({ points: [itself], complete: false });
    const { points, complete } = await curve();
    expect(complete).toBe(true);
    expect(points.length).toBeGreaterThan(0);
    points.forEach((point, at) => {
      expect(point.bound).toBeGreaterThanOrEqual(point.value - 1e-9);
      expect(point.part).toBeLessThanOrEqual(1);
      if (at > 0) expect(point.sheets).toBeGreaterThan(points[at - 1]!.sheets);
    });
    expect(Math.max(...points.map(({ part }) => part))).toBe(1);
    const most = points.at(-1)!;
    const free = await ask(service, 'POST', '/api/plans', { ...WISH(plan), sheets: most.sheets });
    const had = valueOf<Plans.Plan>(free);
    expect(free.statusCode).toBe(201);
    expect(had.sheetsUsed.length).toBeLessThanOrEqual(most.sheets);
    expect(had.value).toBeGreaterThanOrEqual(plan.value - 1e-9);
    expect(had.bound).toBeGreaterThanOrEqual(had.value);
    expect((await ask(service, 'GET', had.cards[0]!.picture)).statusCode).toBe(200);
  });

  test('cards without patterned paper take no sheets, and no number of sheets is offered', async () => {
    const { service, plan } = await planned();
    const { layouts } = valueOf<{ layouts: LayoutListing[] }>(
      await ask(service, 'GET', '/api/layouts'),
    );
    const { card, fold, layers } = layouts[0]!;
    const plain = layers.filter(({ material }) => material === 'cardstock');
    const made = await ask(service, 'POST', '/api/layouts', {
      name: 'Plain',
      card,
      fold,
      layers: plain,
    });
    const { id: layout } = valueOf<{ id: string }>(made);
    const answer = await ask(service, 'POST', '/api/plans', {
      pad: plan.pad,
      cards: [{ layout, count: 2 }],
    });
    const bare = valueOf<Plans.Plan>(answer);
    expect(bare).toMatchObject({ sheetsUsed: [], proven: true });
    for (const none of [
      ['curve', { points: [], complete: false }],
      ['curve', { points: [], complete: true }],
      ['others', { others: [] }],
    ] as const)
      expect(valueOf(await ask(service, 'GET', `/api/plans/${bare.id}/${none[0]}`))).toEqual(
        none[1],
      );
  });

  test('pins that cannot all hold are answered with the smallest set that clashes, and no other', async () => {
    const { service, plan } = await planned();
    const [one, two] = plan.sheetsUsed;
    const layerOf = (slot: Plans.Plan['sheetsUsed'][number]): { card: number; layer: string } => {
      const card = plan.cards.find(({ number }) => number === slot.cards[0])!;
      return {
        card: card.number,
        layer: card.layers.find(({ sheet }) => sheet === slot.sheet)!.layer,
      };
    };
    const pins = [
      { ...layerOf(one!), sheet: one!.sheet },
      { ...layerOf(two!), sheet: one!.sheet },
    ];
    const third = plan.sheetsUsed.slice(2).map((slot) => ({ ...layerOf(slot), sheet: slot.sheet }));
    const answer = problemIn(
      await ask(service, 'POST', '/api/plans', { ...WISH(plan), pins: [...third, ...pins] }),
    );
    expect(answer).toMatchObject({ status: 409, field: 'pins' });
    expect(answer.received).toEqual(pins);
    for (const { card, layer } of pins) expect(answer.detail).toContain(`${layer} of card ${card}`);
    expect(answer.detail).toMatch(/cut from 2 sheets, and of .+ there is 1\.$/);
    expect(answer.mend).toBe('Take back one of them.');
  });

  test('what could lie in a layer: each says whether it may, and which pin forbids it', async () => {
    const { service, plan } = await planned();
    const [one, two] = plan.sheetsUsed;
    const at = (slot: typeof one): { card: Plans.PlannedCard; layer: string } => {
      const card = plan.cards.find(({ number }) => number === slot!.cards[0])!;
      return { card, layer: card.layers.find(({ sheet }) => sheet === slot!.sheet)!.layer };
    };
    const { card, layer } = at(two);
    const pin = { card: at(one).card.number, layer: at(one).layer, sheet: one!.sheet };
    const wish = { ...WISH(plan), pins: [pin] };
    const pinned = valueOf<Plans.Plan>(await ask(service, 'POST', '/api/plans', wish));
    const choices = async (of: string): Promise<Again.LayerChoice[]> =>
      valueOf<{ choices: Again.LayerChoice[] }>(
        await ask(service, 'GET', `/api/plans/${of}/cards/${card.id}/layers/${layer}/choices`),
      ).choices;
    const free = await choices(plan.id);
    expect(free).toHaveLength(12);
    expect(free.every(({ allowed }) => allowed)).toBe(true);
    const now = free.filter((choice) => choice.now);
    expect(now.map(({ sheet }) => sheet)).toEqual([two!.sheet]);
    expect(now[0]!.score).toBeCloseTo(card.score, 9);
    const barred = (await choices(pinned.id)).filter(({ allowed }) => !allowed);
    expect(barred).toHaveLength(2);
    for (const { sheet, forbiddenBy, because } of barred) {
      expect(sheet).toBe(one!.sheet);
      expect(forbiddenBy).toEqual([pin]);
      expect(because).toMatch(`${pin.layer} of card ${pin.card}. Take that back first.`);
    }
    for (const { side, allowed } of await choices(pinned.id)) {
      const pins = [pin, { card: card.number, layer, side }];
      const answer = await ask(service, 'POST', '/api/plans', { ...wish, pins });
      expect(answer.statusCode).toBe(allowed ? 201 : 409);
    }
    const nowhere = `/api/plans/${plan.id}/cards/${card.id}/layers/none/choices`;
    expect(problemIn(await ask(service, 'GET', nowhere))).toMatchObject({
      status: 404,
      field: 'layer',
    });
  });

  test('too few sheets for the cards are refused, naming what to do', async () => {
    const { service, plan } = await planned();
    const wish = { ...WISH(plan), cards: [{ layout: plan.cards[0]!.layout, count: 40 }] };
    const answer = problemIn(await ask(service, 'POST', '/api/plans', { ...wish, sheets: 1 }));
    expect(answer).toMatchObject({ field: 'sheets' });
    expect(answer.mend).toMatch(/fewer cards|more sheets/);
  });

  test.each([
    ['a sheet that is not of the pad', () => 'nobody', 404],
    ['one sheet in two slots', (plan: Plans.Plan) => plan.sheetsUsed[1]!.sheet, 409],
  ])('%s cannot be taken', async (_what, other, status) => {
    const { service, plan } = await planned();
    const first = plan.sheetsUsed[0]!.slot;
    const body = { slots: { ...slots(plan), [first]: other(plan) } };
    const answer = await ask(service, 'POST', `/api/plans/${plan.id}/taken`, body);
    expect(problemIn(answer).status).toBe(status);
    expect(problemIn(answer).field).toMatch(/^slots/);
  });
});

const WISH = (plan: Plans.Plan): object => ({
  pad: plan.pad,
  cards: [{ layout: plan.cards[0]!.layout, count: plan.cards.length }],
});

function slots(plan: Plans.Plan): Record<string, string> {
  return Object.fromEntries(plan.sheetsUsed.map(({ slot, sheet }) => [slot, sheet]));
}

async function planned(): Promise<{ service: Mounted; plan: Plans.Plan }> {
  const service = await mount(await newFolder());
  const pad = await filledPad(service);
  return { service, plan: await newPlan(service, pad.id) };
}
