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
