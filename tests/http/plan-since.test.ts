import { describe, expect, test } from 'vitest';
import type { Plan } from '../../server/contract/plans.ts';
import type { Supplies } from '../../server/contract/supplies.ts';
import { papersSince, wishesLeft } from '../../web/plan/papers-since.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan, padAt, valueOf } from './mount.ts';

describe('what was done to papers and shelf since a plan was made', () => {
  test('a print turned, a sheet counted anew and a sheet thrown away are told, and nothing where nothing was done', async () => {
    const service = await mount(await newFolder());
    const { id } = await filledPad(service);
    const plan = await newPlan(service, id);
    const [first, second] = (await padAt(service, id)).sheets;
    expect(papersSince(plan, await padAt(service, id))).toEqual({
      turned: [],
      corrected: [],
      added: [],
      gone: false,
    });
    const { direction, up } = first!.front!.pattern;
    const other = direction === 'one-way' ? (up + 90) % 360 : 90;
    await ask(service, 'PATCH', `/api/sides/${first!.front!.id}`, { up: other });
    await ask(service, 'PATCH', `/api/sheets/${second!.id}`, { copies: second!.copies + 1 });
    const since = papersSince(plan, await padAt(service, id));
    expect(since.turned).toEqual([`${first!.label}, front`]);
    expect(since.corrected).toEqual([second!.label]);
    const { pad, cards } = plan.asked;
    const again = await ask(service, 'POST', '/api/plans', { pad, cards, from: plan.id });
    expect(papersSince(valueOf<Plan>(again), await padAt(service, id)).turned).toEqual([]);

    const whole = await padAt(service, id);
    const used = plan.sheetsUsed[0]!.sheet;
    const without = { ...whole, sheets: whole.sheets.filter((sheet) => sheet.id !== used) };
    expect(papersSince(plan, without).gone).toBe(true);
    const pins = [
      { card: 1, layer: 'panel', sheet: used },
      { card: 2, layer: 'mat', supply: 'nobody' },
    ];
    const wishes = { cards, pins, without: [used] };
    expect(wishesLeft(wishes, without, [])).toEqual({ pins: [], without: [] });
    expect(wishesLeft(wishes, whole, [])).toEqual({ pins: [pins[0]], without: [used] });
  });

  test('cardstock is chosen anew with every paper left where it lies, whatever was turned since', async () => {
    const service = await mount(await newFolder());
    const { id } = await filledPad(service);
    const plan = await newPlan(service, id);
    const [first] = (await padAt(service, id)).sheets;
    const wanted = plan.cards.flatMap(({ layers }) =>
      layers.flatMap((layer) => layer.wanted?.lab ?? []),
    );
    const lab = wanted.length > 0 ? wanted.slice(0, 3) : [90, 0, 5];
    const body = { kind: 'cardstock', name: 'Just bought', colour: { lab } };
    const answer = await ask(service, 'POST', '/api/supplies', body);
    const bought = valueOf<Supplies>(answer).supplies[0]!.id;
    const { pad, cards } = plan.asked;
    const best = valueOf<Plan>(await ask(service, 'POST', '/api/plans', { pad, cards }));
    await ask(service, 'PATCH', `/api/sides/${first!.front!.id}`, { up: 90 });
    const slots = Object.fromEntries(plan.sheetsUsed.map(({ slot, sheet }) => [slot, sheet]));
    const taken = async (more: object): Promise<Plan> =>
      valueOf<Plan>(await ask(service, 'POST', `/api/plans/${plan.id}/taken`, { slots, ...more }));
    const then = await taken({});
    expect(then.supplies).not.toContain(bought);
    const now = await taken({ supplies: 'now' });
    expect(now.supplies).toContain(bought);
    expect(now.sheetsUsed).toEqual(plan.sheetsUsed);
    expect(now.papers).toEqual(plan.papers);
    expect(sidesOf(now)).toEqual(sidesOf(plan));
    expect(now.asked.from).toBe(plan.id);
    expect(now.value).toBeGreaterThanOrEqual(plan.value - 1e-9);
    expect(now.bound).toBeGreaterThanOrEqual(now.value - 1e-9);
    // No plan of the same cuts passes what is said to be the most.
    expect(best.value).toBeLessThanOrEqual(now.bound + 1e-9);
    if (now.proven) expect(now.value).toBeCloseTo(best.value, 9);
  });
});

function sidesOf({ cards }: Plan): (string | undefined)[][] {
  return cards.map(({ layers }) => layers.map(({ side }) => side));
}
