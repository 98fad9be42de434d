import { describe, expect, test } from 'vitest';
import type { Pad, PadSummary } from '../../server/contract/pads.ts';
import { newFolder } from '../store/folder.ts';
import { papers } from './fake-desk.ts';
import { ask, filledPad, mount, newPad, padAt, problemIn, sendPhoto, valueOf } from './mount.ts';

const SIX = { width: '6 in', height: '6 in' };

describe('pads', () => {
  test('a new pad is answered whole, with its address', async () => {
    const service = await mount(await newFolder());
    const answer = await ask(service, 'POST', '/api/pads', {
      name: '  Tidewrack ',
      sheetSize: SIX,
    });
    const pad = valueOf<Pad>(answer);
    expect(answer.statusCode).toBe(201);
    expect(answer.headers.location).toBe(`/api/pads/${pad.id}`);
    expect(pad).toMatchObject({ name: 'Tidewrack', sheetSize: SIX, sheets: [], story: [] });
    expect(await padAt(service, pad.id)).toEqual(pad);
  });

  test('a size in centimetres comes back exactly, in millimetres', async () => {
    const service = await mount(await newFolder());
    const sheetSize = { width: '15,2 cm', height: '15 cm' };
    const answer = await ask(service, 'POST', '/api/pads', { name: 'Moss', sheetSize });
    expect(valueOf<Pad>(answer).sheetSize).toEqual({ width: '152 mm', height: '150 mm' });
  });

  test('are listed with how many sheets they have', async () => {
    const service = await mount(await newFolder());
    const pad = await newPad(service);
    await sendPhoto(service, pad, 'front', { papers: papers(4) });
    await newPad(service, 'Second');
    const { pads } = valueOf<{ pads: PadSummary[] }>(await ask(service, 'GET', '/api/pads'));
    expect(pads.map(({ name, sheetCount }) => [name, sheetCount])).toEqual([
      ['Tidewrack', 4],
      ['Second', 0],
    ]);
  });

  test.each([
    [{ name: '', sheetSize: SIX }, 'name'],
    [{ sheetSize: SIX }, 'name'],
    [{ name: 'two\nlines', sheetSize: SIX }, 'name'],
    [{ name: 'Moss', sheetSize: { width: 'wide', height: '6 in' } }, 'sheetSize.width'],
    [{ name: 'Moss', sheetSize: { width: '6 in' } }, 'sheetSize.height'],
    [{ name: 'Moss', sheetSize: { width: 6, height: '6 in' } }, 'sheetSize.width'],
    [{ name: 'Moss', sheetSize: { width: '1/4 in', height: '6 in' } }, 'sheetSize'],
    [{ name: 'Moss', sheetSize: SIX, shetSize: SIX }, 'shetSize'],
    [[], 'the body'],
    ['"text"', 'the body'],
  ])('a wrong wish is refused with its field: %j', async (body, field) => {
    const service = await mount(await newFolder());
    const answer = await ask(service, 'POST', '/api/pads', body);
    const problem = problemIn(answer);
    expect(answer.statusCode).toBeGreaterThanOrEqual(400);
    expect(answer.statusCode).toBeLessThan(500);
    expect(problem.field).toBe(field);
    expect(problem.mend).toMatch(/\w/);
    expect(problem.status).toBe(answer.statusCode);
  });

  test('can be renamed and deleted; a deleted one is not found', async () => {
    const service = await mount(await newFolder());
    const { id } = await filledPad(service);
    const renamed = await ask(service, 'PATCH', `/api/pads/${id}`, { name: 'Shore' });
    expect(valueOf<Pad>(renamed).name).toBe('Shore');
    expect((await ask(service, 'DELETE', `/api/pads/${id}`)).statusCode).toBe(204);
    const gone = await ask(service, 'GET', `/api/pads/${id}`);
    expect(problemIn(gone)).toMatchObject({
      type: '/problems/not-found',
      status: 404,
      field: 'pad',
    });
  });

  test('tell what goes with a side, the best first', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const side = pad.sheets[0]!.front!.id;
    const answer = await ask(service, 'GET', `/api/pads/${pad.id}/coordination?side=${side}`);
    const { companions } = valueOf<{
      companions: { side: string; score: number; why: string }[];
    }>(answer);
    const scores = companions.map(({ score }) => score);
    expect(companions).toHaveLength(11);
    expect(companions.map((companion) => companion.side)).not.toContain(side);
    expect(scores).toEqual([...scores].sort((p, q) => q - p));
    const other = await ask(service, 'GET', `/api/pads/${pad.id}/coordination?side=none`);
    expect(problemIn(other)).toMatchObject({ status: 404, field: 'side' });
  });

  test('an answer states its revision; who has it already is spared the body', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    const first = await ask(service, 'GET', `/api/pads/${id}`);
    const tag = String(first.headers.etag);
    const same = await ask(service, 'GET', `/api/pads/${id}`, undefined, { 'if-none-match': tag });
    expect([same.statusCode, same.payload]).toEqual([304, '']);
    await ask(service, 'PATCH', `/api/pads/${id}`, { name: 'Shore' });
    const later = await ask(service, 'GET', `/api/pads/${id}`, undefined, { 'if-none-match': tag });
    expect(later.statusCode).toBe(200);
  });

  test('a change meant for an older state is refused and changes nothing (RFC 9110, If-Match)', async () => {
    const service = await mount(await newFolder());
    const id = await newPad(service);
    const tag = String((await ask(service, 'GET', `/api/pads/${id}`)).headers.etag);
    const rename = (name: string): ReturnType<typeof ask> =>
      ask(service, 'PATCH', `/api/pads/${id}`, { name }, { 'if-match': tag });
    expect((await rename('Shore')).statusCode).toBe(200);
    expect(problemIn(await rename('Reef'))).toMatchObject({ type: '/problems/stale', status: 412 });
    expect((await padAt(service, id)).name).toBe('Shore');
  });

  test('the same wish with the same Idempotency-Key makes one pad, also after a restart', async () => {
    const folder = await newFolder();
    const service = await mount(folder);
    const wish = { name: 'Tidewrack', sheetSize: SIX };
    const key = { 'idempotency-key': 'wish-1' };
    const both = await Promise.all([
      ask(service, 'POST', '/api/pads', wish, key),
      ask(service, 'POST', '/api/pads', wish, key),
    ]);
    await service.stop();
    const again = await mount(folder);
    const third = await ask(again, 'POST', '/api/pads', wish, key);
    const ids = [...both, third].map((answer) => valueOf<Pad>(answer).id);
    expect(new Set(ids).size).toBe(1);
    const other = await ask(again, 'POST', '/api/pads', { ...wish, name: 'Moss' }, key);
    expect(problemIn(other)).toMatchObject({ type: '/problems/used-key', status: 422 });
    expect(valueOf<{ pads: unknown[] }>(await ask(again, 'GET', '/api/pads')).pads).toHaveLength(1);
  });
});
