import { describe, expect, test } from 'vitest';
import type { Side } from '../../server/contract/pads.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, padAt, problemIn, valueOf } from './mount.ts';

describe('which way a print is up', () => {
  test('is said by hand, is kept when the side is read again, and wakes those who look at the pad', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const { id, corners } = pad.sheets[0]!.front!;
    const said = valueOf<Side>(await ask(service, 'PATCH', `/api/sides/${id}`, { up: 90 }));
    expect(said.pattern).toMatchObject({ direction: 'one-way', up: 90, told: true });
    const after = await padAt(service, pad.id);
    expect(after.revision).toBeGreaterThan(pad.revision);
    expect(after.sheets[0]!.front).toEqual(said);

    const moved = await ask(service, 'PATCH', `/api/sides/${id}`, { corners });
    expect(valueOf<Side>(moved).pattern).toMatchObject({ direction: 'one-way', up: 90 });

    const none = valueOf<Side>(await ask(service, 'PATCH', `/api/sides/${id}`, { up: 'none' }));
    expect(none.pattern).toMatchObject({ direction: 'none', told: true });
  });

  test('is one of five words; another is refused by naming them all', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const { id } = pad.sheets[0]!.front!;
    const answer = await ask(service, 'PATCH', `/api/sides/${id}`, { up: 'sideways' });
    expect(problemIn(answer)).toMatchObject({
      status: 400,
      field: 'up',
      received: 'sideways',
      detail: 'Expected 0 or 90 or 180 or 270 or "none" for up but received "sideways".',
    });
  });

  test('what is said, or shown of a corner, while the photo is read again is not lost', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const [up, cornered] = pad.sheets.map(({ front }) => front!);
    const corners = [
      [10, 20],
      [900, 25],
      [905, 910],
      [12, 900],
    ];
    const { desk } = service.edges;
    const real = { ...desk };
    let readings = 0;
    const meanwhile = (change: () => Promise<void>): void => {
      Object.assign(desk, {
        readSides: async (task: Parameters<typeof desk.readSides>[0]) => {
          const read = await real.readSides(task);
          if ((readings += 1) === 1) await change();
          return read;
        },
      });
    };
    meanwhile(async () => {
      await ask(service, 'PATCH', `/api/sides/${up!.id}`, { up: 270 });
      await ask(service, 'PATCH', `/api/sides/${cornered!.id}`, { corners });
    });
    const white = [100, 100];
    const again = await ask(service, 'PATCH', `/api/photos/${pad.photos[0]!.id}`, { white });
    expect(again.statusCode).toBe(200);
    // The photo, the side whose corners she moved, and the photo once more with those.
    expect(readings).toBe(3);
    const after = (await padAt(service, pad.id)).sheets.map(({ front }) => front!);
    expect(after[0]!.pattern).toMatchObject({ direction: 'one-way', up: 270, told: true });
    expect(after[0]!.corners).toEqual(up!.corners);
    expect(after[1]!.corners).toEqual(corners);

    readings = 0;
    meanwhile(async () => {
      await ask(service, 'PATCH', `/api/sides/${cornered!.id}`, { up: 90 });
    });
    await ask(service, 'PATCH', `/api/sides/${cornered!.id}`, { corners: up!.corners });
    const moved = (await padAt(service, pad.id)).sheets[1]!.front!;
    expect(moved.corners).toEqual(up!.corners);
    expect(moved.pattern).toMatchObject({ direction: 'one-way', up: 90, told: true });
  });

  test('nothing said, or a turn that is none, is refused with its field; an older look too', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const { id, revision } = pad.sheets[0]!.front!;
    const way = `/api/sides/${id}`;
    expect(problemIn(await ask(service, 'PATCH', way, {}))).toMatchObject({
      status: 400,
      field: 'corners',
    });
    expect(problemIn(await ask(service, 'PATCH', way, { up: 45 }))).toMatchObject({
      status: 400,
      field: 'up',
    });
    await ask(service, 'PATCH', way, { up: 180 });
    const tag = `"${revision}"`;
    const late = await ask(service, 'PATCH', way, { up: 0 }, { 'if-match': tag });
    expect(late.statusCode).toBe(412);
  });
});
