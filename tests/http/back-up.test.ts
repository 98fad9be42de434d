import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Pad } from '../../server/contract/pads.ts';
import type { Plan } from '../../server/contract/plans.ts';
import { backUp, restore } from '../../server/store/back-up.ts';
import { openFile } from '../../server/store/dialect.ts';
import { compiled } from '../compiled/compiled.ts';
import { newFolder } from '../store/folder.ts';
import { ask, filledPad, mount, newPlan, valueOf } from './mount.ts';
import type { Mounted } from './mount.ts';

/** The answers of a service to these questions. */
async function allAnswers(service: Mounted, urls: readonly string[]): Promise<string[]> {
  const answers = await Promise.all(urls.map((url) => ask(service, 'GET', url)));
  return answers.map(({ statusCode, rawPayload }, at) => {
    const content = createHash('sha256').update(rawPayload).digest('hex');
    return `${statusCode} ${urls[at]!} ${content}`;
  });
}

test('a copy made by the command while the service runs gives every answer again in an empty folder', async () => {
  const service = await mount(await newFolder());
  const pad = await filledPad(service);
  const all = await everyAddress(service, pad, await newPlan(service, pad.id));
  const folder = await newFolder();
  const [copy, again] = [join(folder, 'copy'), join(folder, 'again')];
  // Two photos with a picture each, twelve swatches.
  expect(keepSafe('backup', copy, dataFolderOf(service))).toMatch(/^0 Done: .* 16 files/);
  const before = await allAnswers(service, all);
  expect(before.filter((answer) => !answer.startsWith('200 '))).toEqual([]);
  await filledPad(service);
  expect(keepSafe('restore', copy, again)).toMatch(/^0 Done: .* 16 files/);
  expect(await allAnswers(await mount(again), all)).toEqual(before);
  await expect(restore(copy, again)).rejects.toThrow(/empty folder/);
});

test('a copy into a folder that holds something is refused in words', async () => {
  const folder = await newFolder();
  await writeFile(join(folder, 'letter'), 'something');
  expect(keepSafe('backup', folder, await newFolder())).toMatch(/^1 Expected an empty folder/);
});

/** What the command says, with the code that it ends with before it. */
function keepSafe(verb: string, copy: string, data: string): string {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [compiled('server/keep-safe.ts'), verb, copy],
    { env: { ...process.env, DATA_DIR: data }, encoding: 'utf8' },
  );
  return `${status} ${stdout}${stderr}`;
}

/** Every address that the service describes and that answers with something, filled in with what there is. */
async function everyAddress(service: Mounted, pad: Pad, plan: Plan): Promise<string[]> {
  const colour = { lab: [50, 20, -10] };
  const { supplies } = valueOf<{ supplies: { id: string }[] }>(
    await ask(service, 'POST', '/api/supplies', { kind: 'ink', name: 'Kelp', colour }),
  );
  const { layouts } = valueOf<{ layouts: { id: string }[] }>(
    await ask(service, 'GET', '/api/layouts'),
  );
  await ask(service, 'POST', '/api/layouts', { ...layouts[0]!, id: 'her-own' });
  await ask(service, 'POST', `/api/plans/${plan.id}/ticks`, { step: 'card-1', done: true });
  const [sheet] = pad.sheets;
  const part = { sheet: sheet!.id, size: { width: '2 in', height: '3 in' } };
  await ask(service, 'POST', `/api/pads/${pad.id}/leftovers`, part);
  const known: Record<string, string> = {
    pad: pad.id,
    supply: supplies[0]!.id,
    photo: pad.photos[0]!.id,
    side: sheet!.front!.id,
    plan: plan.id,
    card: 'card-1',
    slot: plan.sheetsUsed[0]!.slot,
    sheet: pad.sheets.find(({ id }) => plan.sheetsUsed.some((used) => used.sheet === id))!.id,
    layer: plan.cards[0]!.layers[0]!.layer,
  };
  const { paths } = valueOf<{ paths: Record<string, object> }>(
    await ask(service, 'GET', '/api/openapi.json'),
  );
  const told = Object.entries(paths).flatMap(([path, ways]) => ('get' in ways ? [path] : []));
  const left = told.filter((path) => !NOT_COMPARED.has(path));
  expect(left.length).toBe(told.length - NOT_COMPARED.size);
  const sheets = plan.sheetsUsed.map((used) => used.sheet).join('.');
  const addresses = left.map((path) =>
    (path.includes('/others/cards/') ? `${path}?sheets=${sheets}` : path).replace(
      /\{(\w+)\}/g,
      (_, name: string) => {
        if (known[name] === undefined) throw new Error(`Nothing here is called ${name}`);
        return known[name];
      },
    ),
  );
  const swatches = pad.sheets.flatMap(({ front, back }) => [front!.swatch, back!.swatch]);
  const pictures = pad.photos.map(({ picture }) => picture);
  return [...addresses, ...swatches, ...pictures];
}

/** What goes on for ever, is only of a device on a network, waits, or is a sheet of cardstock that this plan has none of. */
const NOT_COMPARED = new Set([
  '/api/pads/{pad}/events',
  '/api/keys',
  '/api/uploads/{upload}',
  '/api/plans/{plan}/cardstock/{sheet}.svg',
]);

test('a copy from before the newest tables is brought up to date as it is restored', async () => {
  const service = await mount(await newFolder());
  const pad = await filledPad(service);
  const folder = await newFolder();
  const [copy, again] = [join(folder, 'copy'), join(folder, 'again')];
  await backUp(dataFolderOf(service), copy);
  const db = openFile(join(copy, 'plyhue.db'));
  // As it was before deleted pads and waiting photos had tables of their own, and plans told a new choice of cards.
  for (const table of ['uploads', 'gone_pads']) await db.execute(`drop table ${table}`);
  await db.execute('alter table plans drop column anew');
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
