import { join } from 'node:path';
import { expect, test } from 'vitest';
import { backUp, restore } from '../../server/store/back-up.ts';
import { openFile } from '../../server/store/dialect.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan } from './mount.ts';
import type { Mounted } from './mount.ts';

/** Every answer that the folder gives: lists, pads, plans, pictures. */
async function allAnswers(service: Mounted, urls: readonly string[]): Promise<string[]> {
  const answers = await Promise.all(urls.map((url) => ask(service, 'GET', url)));
  return answers.map(({ statusCode, rawPayload }) => `${statusCode} ${rawPayload.toString('hex')}`);
}

test('a copy made while the service runs gives every answer again in an empty folder', async () => {
  const service = await mount(await newFolder());
  const pad = await filledPad(service);
  const plan = await newPlan(service, pad.id);
  const folder = await newFolder();
  const [copy, again] = [join(folder, 'copy'), join(folder, 'again')];
  const { files } = await backUp(dataFolderOf(service), copy);
  // Two photos with a picture each, twelve swatches.
  expect(files).toBe(2 + 2 + 12);
  const swatches = pad.sheets.flatMap(({ front, back }) => [front!.swatch, back!.swatch]);
  const pictures = pad.photos.map(({ picture }) => picture);
  const urls = ['/api/pads', `/api/pads/${pad.id}`, '/api/supplies', `/api/plans/${plan.id}`];
  const all = [...urls, ...swatches, ...pictures, plan.cards[0]!.picture.replace('png', 'svg')];
  const before = await allAnswers(service, all);
  await filledPad(service);
  await restore(copy, again);
  expect(await allAnswers(await mount(again), all)).toEqual(before);
  await expect(restore(copy, again)).rejects.toThrow(/empty folder/);
});

test('a copy from before the newest tables is brought up to date as it is restored', async () => {
  const service = await mount(await newFolder());
  const pad = await filledPad(service);
  const folder = await newFolder();
  const [copy, again] = [join(folder, 'copy'), join(folder, 'again')];
  await backUp(dataFolderOf(service), copy);
  const db = openFile(join(copy, 'plyhue.db'));
  // As it was before deleted pads and waiting photos had tables of their own.
  for (const table of ['uploads', 'gone_pads']) await db.execute(`drop table ${table}`);
  await db.execute('delete from steps where step > 4');
  db.close();
  expect((await restore(copy, again)).files).toBe(2 + 2 + 12);
  const urls = ['/api/pads', `/api/pads/${pad.id}`, `/api/pads/${pad.id}/uploads`];
  expect(await allAnswers(await mount(again), urls)).toEqual(await allAnswers(service, urls));
});

function dataFolderOf({ edges }: Mounted): string {
  const path = edges.store.files.pathOf('photos', '0'.repeat(64));
  return join(path, '..', '..', '..');
}
