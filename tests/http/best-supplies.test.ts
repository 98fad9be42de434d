import { describe, expect, test } from 'vitest';
import type { PlanGuide } from '../../server/contract/plan-guides.ts';
import type { BestSupplies, Match, Supplies, Twins } from '../../server/contract/supplies.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan, problemIn, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

async function add(
  service: Mounted,
  kind: string,
  name: string,
  lab: readonly number[],
): Promise<string> {
  const answer = await ask(service, 'POST', '/api/supplies', { kind, name, colour: { lab } });
  return valueOf<Supplies>(answer).supplies[0]!.id;
}

describe('the best of her supplies', () => {
  test('for a side: cardstock that goes under it, inks that read on its ground, the pale one a clear no', async () => {
    const service = await mount(await newFolder());
    const side = (await filledPad(service)).sheets[0]!.front!;
    const white = await add(service, 'cardstock', 'White', [96, 0, 0]);
    const black = await add(service, 'ink', 'Black', [15, 0, 0]);
    const pale = await add(service, 'ink', 'Pale', [92, 0, 4]);
    const answer = await ask(service, 'GET', `/api/sides/${side.id}/supplies`);
    const best = valueOf<BestSupplies>(answer);
    expect(best.cardstock.map(({ supply, use }) => [supply, use])).toEqual([[white, 'quiet']]);
    const onWhite = best.greetings.find(({ strip }) => strip.lab[0] === 96)!;
    expect(onWhite.inks.map(({ ink, reads }) => [ink, reads])).toEqual([
      [black, 'small letters'],
      [pale, 'cannot be read'],
    ]);
    // WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for small letters, 3 to 1 for large ones.
    expect(onWhite.inks[0]!.contrast).toBeGreaterThanOrEqual(4.5);
    expect(onWhite.inks[1]!.contrast).toBeLessThan(3);
    expect(onWhite.inks[1]!.reason).toContain('Cannot be read');
    expect(best.range).toContain('estimate');
    expect(best.caution).toContain('not a measurement');
  });

  test('for one colour of a side, with the very figures of the match with it; a place that it lacks is refused', async () => {
    const service = await mount(await newFolder());
    const side = (await filledPad(service)).sheets[0]!.front!;
    const near = side.palette[1]!;
    const card = await add(service, 'cardstock', 'Near it', near.lab);
    const ink = await add(service, 'ink', 'Near it too', near.lab);
    const url = `/api/sides/${side.id}/supplies`;
    const best = valueOf<BestSupplies>(await ask(service, 'GET', `${url}?colour=1`));
    const match = valueOf<Match>(
      await ask(service, 'POST', '/api/matches', { supply: card, side: side.id, colour: 1 }),
    );
    const { verdict, difference, uncertainty } = match;
    expect(best.cardstock[0]).toMatchObject({ supply: card, verdict, difference, uncertainty });
    expect(best.accents).toMatchObject([{ accent: { lab: near.lab }, best: { ink, verdict } }]);
    const ground = valueOf<BestSupplies>(await ask(service, 'GET', `${url}?colour=0`));
    expect(ground.cardstock[0]).toMatchObject({ supply: card, use: 'odd', verdict: 'apart' });
    expect(ground.accents).toMatchObject([{ accent: { lab: side.palette[0]!.lab } }]);
    const beyond = await ask(service, 'GET', `${url}?colour=60`);
    expect(problemIn(beyond)).toMatchObject({ status: 400, field: 'colour' });
  });

  test('for a plan and for one of its cards; what is missing names the cards that it serves', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const plan = await newPlan(service, pad.id);
    const url = `/api/plans/${plan.id}/supplies`;
    const bare = valueOf<BestSupplies>(await ask(service, 'GET', url));
    expect(bare.cardstock).toEqual([]);
    const wanted = plan.cards.filter(({ layers }) => layers.some((layer) => layer.wanted));
    const served = bare.missing.filter(({ kind }) => kind === 'cardstock');
    expect([...new Set(served.flatMap(({ cards }) => cards))].sort()).toEqual(
      wanted.map(({ number }) => number),
    );
    for (const { colour } of bare.missing) expect(colour.name).toMatch(/^[a-z -]+$/);
    const inks = bare.missing.filter(({ kind }) => kind === 'ink');
    expect(inks.length).toBeGreaterThan(0);
    const one = valueOf<BestSupplies>(await ask(service, 'GET', `${url}?card=1`));
    expect(one.missing.flatMap(({ cards }) => cards).every((card) => card === 1)).toBe(true);
    const none = await ask(service, 'GET', `${url}?card=99`);
    expect(problemIn(none)).toMatchObject({ status: 404, field: 'card' });
  });

  test('cardstock that runs short is counted by the sheet, as in the guide, until she has enough', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const shell = await add(service, 'cardstock', 'Shell', [92, 1, 6]);
    // For the mats, which would not be seen on a base like themselves.
    await add(service, 'cardstock', 'Slate', [30, 0, -8]);
    const left = (sheets: number | null): Promise<unknown> =>
      ask(service, 'PATCH', `/api/supplies/${shell}`, { sheets });
    await left(1);
    const plan = await newPlan(service, pad.id);
    const url = `/api/plans/${plan.id}`;
    const best = async (): Promise<BestSupplies> =>
      valueOf<BestSupplies>(await ask(service, 'GET', `${url}/supplies`));
    const short = await best();
    const taken = short.takes.find(({ supply }) => supply === shell)!;
    const needed = taken.sheets!.count;
    expect(taken).toMatchObject({ name: 'Shell', left: 1 });
    // Three bases for cards of 4 1/4 x 5 1/2 in: a sheet of 8 1/2 x 11 in holds two of 4 1/4 x 11 in at most.
    expect(needed).toBeGreaterThanOrEqual(2);
    const said = `${needed - 1} more ${needed === 2 ? 'sheet' : 'sheets'} of 8 1/2 x 11 in: ${needed} are needed and 1 is left`;
    expect(short.missing.filter(({ more }) => more !== null)).toMatchObject([
      { sheets: said, more: { supply: shell, name: 'Shell', left: 1, needed } },
    ]);
    const guide = valueOf<PlanGuide>(await ask(service, 'GET', `${url}/guide`));
    expect(guide.shopping.map(({ name, sheets }) => [name, sheets])).toContainEqual([
      'Shell',
      said,
    ]);
    await left(needed);
    expect((await best()).missing.filter(({ more }) => more !== null)).toEqual([]);
    await left(null);
    const unsaid = await best();
    expect(unsaid.missing.filter(({ more }) => more !== null)).toEqual([]);
    expect(unsaid.takes.find(({ supply }) => supply === shell)!.left).toBeNull();
  });
});

describe('supplies that she added twice', () => {
  test('are told, each with the one that was there before', async () => {
    const service = await mount(await newFolder());
    const first = await add(service, 'cardstock', 'Shell', [92, 1, 6]);
    await add(service, 'cardstock', 'Slate', [40, 0, -12]);
    const url = '/api/supplies/twins';
    expect(valueOf<Twins>(await ask(service, 'GET', url)).twins).toEqual([]);
    await add(service, 'ink', 'Shell ink', [92, 1, 6]);
    const again = await add(service, 'cardstock', 'Shell again', [92, 1, 6.5]);
    expect(valueOf<Twins>(await ask(service, 'GET', url)).twins).toEqual([{ first, again }]);
  });
});

describe('what came with the demo pad', () => {
  test('stays with the demo pad: a pad of her own is planned and shown without it', async () => {
    const service = await mount(await newFolder());
    const [demo, own] = [await filledPad(service), await filledPad(service)];
    const mine = await add(service, 'cardstock', 'White', [96, 0, 0]);
    await service.edges.store.write(async (records) => {
      const hers = (await records.supplies.at(mine))!;
      const came = { id: 'theirs', name: 'Tide', demo: true, pad: demo.id };
      await records.supplies.add({ ...hers, ...came });
    });
    expect((await newPlan(service, demo.id)).supplies).toEqual([mine, 'theirs']);
    const plan = await newPlan(service, own.id);
    expect(plan.supplies).toEqual([mine]);
    for (const url of [`/api/plans/${plan.id}`, `/api/sides/${own.sheets[0]!.front!.id}`]) {
      const best = valueOf<BestSupplies>(await ask(service, 'GET', `${url}/supplies`));
      expect(best.cardstock.map(({ supply }) => supply)).toEqual([mine]);
    }
    const { supplies } = valueOf<Supplies>(await ask(service, 'GET', '/api/supplies'));
    expect(supplies.map(({ demo: came, pad }) => [came, pad])).toEqual([
      [false, null],
      [true, demo.id],
    ]);
  });
});
