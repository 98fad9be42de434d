import { expect, test } from 'vitest';
import type { Desk } from '../../server/photo-desk.ts';
import { newFolder } from '../store/folder.ts';
import { fakeDesk } from './fake-desk.ts';
import { ask, filledPad, mount, newPlan } from './mount.ts';

test('a swatch whose file is gone leaves the guide and the drawings of its plan, without its picture', async () => {
  const printed: string[][] = [];
  const desk: Desk = {
    ...fakeDesk(),
    guide: ({ swatchFiles }) => {
      printed.push(Object.keys(swatchFiles).sort());
      return Promise.resolve(Buffer.from('%PDF'));
    },
  };
  const service = await mount(await newFolder(), desk);
  const plan = await newPlan(service, (await filledPad(service)).id);
  const print = async (): Promise<string[]> => {
    const { statusCode } = await ask(service, 'GET', `/api/plans/${plan.id}/guide.pdf`);
    expect(statusCode).toBe(200);
    return printed.at(-1)!;
  };
  const card = `/api/plans/${plan.id}/cards/card-1.svg`;
  const picturesIn = async (url: string): Promise<number> => {
    const { statusCode, payload } = await ask(service, 'GET', url);
    expect(statusCode).toBe(200);
    return payload.match(/data:image\/jpeg;base64,/g)?.length ?? 0;
  };
  const whole = await print();
  const shown = await picturesIn(card);
  expect(shown).toBeGreaterThan(0);

  const side = plan.cards[0]!.layers.find(({ side: of }) => of !== undefined)!.side!;
  const { swatch } = (await service.edges.store.read.sides.at(side))!;
  await service.edges.store.files.remove('swatches', swatch);
  expect(await print()).toEqual(whole.filter((one) => one !== side));
  expect(await picturesIn(card)).toBe(shown - 1);
  const { slot } = plan.sheetsUsed[0]!;
  await picturesIn(`/api/plans/${plan.id}/slots/${slot}.svg`);
});
