import { describe, expect, test } from 'vitest';
import type { LayoutListing } from '../../server/contract/layouts.ts';
import type * as Plans from '../../server/contract/plans.ts';
import { samePictures } from '../../web/plan/same-pictures.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, padAt, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

describe('a card looks otherwise, though the same is chosen for it,', () => {
  test.each([
    ['where the colour of its cardstock was changed in the list', recoloured],
    ['where its layout was changed', relaid],
    ['where its side was read again at other corners', readAgain],
  ])('%s: its drawing comes along', async (_why, change) => {
    const service = await mount(await newFolder());
    await bringCardstock(service, 40);
    const { pad, layout } = await padAndLayout(service);
    const wish = { pad, cards: [{ layout, count: 2 }] };
    const first = valueOf<Plans.Plan>(await ask(service, 'POST', '/api/plans', wish));
    await change(service, first);
    const pins = first.cards.flatMap(({ number: card, layers }) =>
      layers.flatMap(({ layer, side, supply }): Plans.Pin[] => {
        if (side !== undefined) return [{ card, layer, side }];
        return supply === undefined ? [] : [{ card, layer, supply }];
      }),
    );
    const again = { ...wish, pins, from: first.id };
    const made = valueOf<Plans.Plan>(
      await ask(service, 'POST', '/api/plans?drawings=changed', again),
    );
    let changed = 0;
    for (const { number, drawing, same } of made.cards) {
      const [then, now] = [await drawn(service, first, number), await drawn(service, made, number)];
      expect([drawing, same]).toEqual(then === now ? [undefined, true] : [now, undefined]);
      if (then !== now) changed += 1;
    }
    expect(changed).toBeGreaterThan(0);
    expect(made.cards.map(chosenFor)).toEqual(first.cards.map(chosenFor));
    const shown = samePictures(made, first);
    for (const { number, picture } of shown.cards) {
      const { body } = await ask(service, 'GET', picture.replace('.png', '.svg?papers=beside'));
      expect(body).toBe(await drawn(service, made, number));
    }
  });
});

async function drawn(service: Mounted, of: Plans.Plan, number: number): Promise<string> {
  const { picture } = of.cards.find((card) => card.number === number)!;
  return (await ask(service, 'GET', picture.replace('.png', '.svg?papers=beside'))).payload;
}

function chosenFor({ number, layers }: Plans.PlannedCard): unknown {
  return [number, layers.map(({ layer, side, supply }) => [layer, side, supply])];
}

async function bringCardstock(service: Mounted, lightness: number): Promise<void> {
  const list = `kind,name,L,a,b,sheets\ncardstock,Shell,${lightness},1,6,\n`;
  await ask(service, 'POST', '/api/supplies.csv', list, { 'content-type': 'text/csv' });
}

const recoloured = (service: Mounted): Promise<void> => bringCardstock(service, 41);

/** A pad, and a layout of her own with patterned paper on cardstock. */
async function padAndLayout(service: Mounted): Promise<{ pad: string; layout: string }> {
  const { id: pad } = await filledPad(service);
  const { layouts } = valueOf<{ layouts: LayoutListing[] }>(
    await ask(service, 'GET', '/api/layouts'),
  );
  const { card, fold, layers } = layouts[0]!;
  const hers = await ask(service, 'POST', '/api/layouts', { name: 'Hers', card, fold, layers });
  return { pad, layout: valueOf<{ id: string }>(hers).id };
}

/** Rounds the corners of its topmost patterned layer. */
async function relaid(service: Mounted, plan: Plans.Plan): Promise<void> {
  const id = plan.cards[0]!.layout;
  const { layouts } = valueOf<{ layouts: LayoutListing[] }>(
    await ask(service, 'GET', '/api/layouts'),
  );
  const { name, card, fold, layers } = layouts.find((layout) => layout.id === id)!;
  const top = layers.findLast(({ material }) => material === 'patterned')!.id;
  const shape = { kind: 'rounded', radius: '1/8 in' };
  const body = {
    name,
    card,
    fold,
    layers: layers.map((layer) => (layer.id === top ? { ...layer, shape } : layer)),
  };
  const answer = await ask(service, 'PUT', `/api/layouts/${id}`, body);
  expect(answer.statusCode).toBe(200);
}

/** Moves the corners of a side that is shown; the desk of the tests then reads the first one of the photo. */
async function readAgain(service: Mounted, plan: Plans.Plan): Promise<void> {
  const [, ...others] = (await padAt(service, plan.pad)).sheets;
  const shown = new Set(plan.cards.flatMap(({ layers }) => layers.map(({ side }) => side)));
  const { id, corners } = others
    .flatMap(({ front, back }) => [front, back])
    .find((side) => side !== null && shown.has(side.id))!;
  const moved = corners.map(([x, y], at) => (at === 0 ? [x + 1, y + 1] : [x, y]));
  const answer = await ask(service, 'PATCH', `/api/sides/${id}`, { corners: moved });
  expect(answer.statusCode).toBe(200);
}
