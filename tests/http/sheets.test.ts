import { describe, expect, test } from 'vitest';
import type { Pad, Sheet } from '../../server/contract/pads.ts';
import { newFolder } from '../store/folder.ts';
import { papers } from './fake-desk.ts';
import { ask, filledPad, mount, newPad, padAt, problemIn, sendPhoto, valueOf } from './mount.ts';

/** Every side of the pad, each told with its place. */
function places(pad: Pad): Record<string, string> {
  return Object.fromEntries(
    pad.sheets.flatMap(({ label, front, back }) => [
      ...(front === null ? [] : [[front.id, `${label} front`] as const]),
      ...(back === null ? [] : [[back.id, `${label} back`] as const]),
    ]),
  );
}

describe('sheets', () => {
  test('take a label and a number of copies', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const { id } = pad.sheets[0]!;
    const answer = await ask(service, 'PATCH', `/api/sheets/${id}`, { label: 'Wrack', copies: 3 });
    expect(valueOf<Sheet>(answer)).toMatchObject({ id, label: 'Wrack', copies: 3 });
    expect((await padAt(service, pad.id)).sheets[0]).toEqual(valueOf(answer));
  });

  test('another back changes places with the one that was there: no side is lost or doubled', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const [one, two] = [pad.sheets[0]!, pad.sheets[1]!];
    await ask(service, 'PATCH', `/api/sheets/${one.id}`, { back: two.back!.id });
    const after = await padAt(service, pad.id);
    expect(after.sheets[0]!.back!.id).toBe(two.back!.id);
    expect(after.sheets[1]!.back!.id).toBe(one.back!.id);
    expect(Object.keys(places(after)).sort()).toEqual(Object.keys(places(pad)).sort());
  });

  test('a back taken off gets a sheet of its own', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const one = pad.sheets[0]!;
    await ask(service, 'PATCH', `/api/sheets/${one.id}`, { back: null });
    const after = await padAt(service, pad.id);
    expect(after.sheets).toHaveLength(7);
    expect(Object.keys(places(after)).sort()).toEqual(Object.keys(places(pad)).sort());
  });

  test('sides moved about and taken off again and again: none is lost, no two sheets are one', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const [one, two] = [pad.sheets[0]!, pad.sheets[1]!];
    for (const front of [null, two.front!.id, one.front!.id, null]) {
      const answer = await ask(service, 'PATCH', `/api/sheets/${one.id}`, { front });
      expect(answer.statusCode).toBe(200);
    }
    const after = await padAt(service, pad.id);
    expect(Object.keys(places(after)).sort()).toEqual(Object.keys(places(pad)).sort());
    expect(new Set(after.sheets.map(({ id }) => id)).size).toBe(after.sheets.length);
  });

  test('a lone back that finds its front leaves no empty sheet', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    await sendPhoto(service, id, 'front', { papers: papers(1, 1) }, 'one');
    await sendPhoto(service, id, 'back', { papers: papers(1, 2) }, 'two');
    const before = await padAt(service, id);
    const back = before.sheets[1]!.back!.id;
    await ask(service, 'PATCH', `/api/sheets/${before.sheets[0]!.id}`, { back });
    expect((await padAt(service, id)).sheets.map(({ label }) => label)).toEqual(['Sheet 1']);
  });

  test.each([
    [{ copies: 0 }, 400, 'copies'],
    [{ copies: 1.5 }, 400, 'copies'],
    [{ label: '' }, 400, 'label'],
    [{ front: 'none' }, 404, 'front'],
    [{ front: null, back: null }, 422, 'sheet'],
  ])('%j is refused and changes nothing', async (change, status, field) => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const answer = await ask(service, 'PATCH', `/api/sheets/${pad.sheets[2]!.id}`, change);
    expect([answer.statusCode, problemIn(answer).field]).toEqual([status, field]);
    expect(await padAt(service, pad.id)).toEqual(pad);
  });

  test('a side of another pad is refused', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const other = await filledPad(service);
    const change = { back: other.sheets[0]!.back!.id };
    const answer = await ask(service, 'PATCH', `/api/sheets/${pad.sheets[0]!.id}`, change);
    expect(problemIn(answer)).toMatchObject({ status: 422, field: 'back' });
  });
});
