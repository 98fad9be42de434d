/** What goes wrong around the service: each has a clear answer, and nothing that was saved is lost. */
import { spawnSync } from 'node:child_process';
import { closeSync, openSync, readFileSync, rmSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { createClient } from '@libsql/client';
import { describe, expect, test } from 'vitest';
import type * as Plans from '../../server/contract/plans.ts';
import { faultInWords } from '../../server/fault-in-words.ts';
import { newCode } from '../../server/http/keys.ts';
import { problemOf } from '../../server/http/problem-of.ts';
import { HOUSE } from '../../server/store/asker.ts';
import { openStore } from '../../server/store/open-store.ts';
import { compiled } from '../compiled/compiled.ts';
import { fakeDesk, papers } from '../http/fake-desk.ts';
import {
  ask,
  filledPad,
  mount,
  newPad,
  newPlan,
  padAt,
  problemIn,
  sendForm,
  sendPhoto,
  valueOf,
} from '../http/mount.ts';
import { newFolder } from '../store/folder.ts';
import { readOnly, smallDisk } from './mounts.ts';

describe('a full disk', () => {
  test('is told of, nothing is lost, and all goes on when there is room (skipped where no disk can be mounted)', async (context) => {
    const folder = await smallDisk(4096);
    if (folder === null) return context.skip('this user may not mount a disk');
    const service = await mount(folder);
    const pad = await filledPad(service);
    const filler = join(folder, 'filler');
    fill(filler);
    const photo = [
      ['side', 'front'],
      ['arrangement', 'two'],
      ['photo', Buffer.alloc(300_000, '{"papers":[]}'), 'photo.jpg'],
    ] as const;
    const answer = await sendForm(service, `/api/pads/${pad.id}/photos`, photo);
    expect(problemIn(answer)).toMatchObject({ status: 507, type: '/problems/disk-full' });
    expect(problemIn(answer).mend).toContain('Free some space');
    expect(await padAt(service, pad.id)).toEqual(pad);
    rmSync(filler);
    await sendPhoto(service, pad.id, 'front', { papers: papers(2, 5) }, 'two');
    const after = await padAt(service, pad.id);
    expect(after.sheets.length).toBe(pad.sheets.length + 2);
    await service.stop();
    expect(await padAt(await mount(folder), pad.id)).toEqual(after);
  });

  test.each([
    ['ENOSPC', 507, /full/],
    ['EDQUOT', 507, /full/],
    ['SQLITE_FULL', 507, /full/],
    ['53100', 507, /full/],
    ['EROFS', 503, /cannot be written/],
    ['EACCES', 503, /cannot be written/],
    ['SQLITE_READONLY', 503, /cannot be written/],
    ['ECONNREFUSED', 503, /could not be reached/],
    ['57P01', 503, /could not be reached/],
    ['SQLITE_CORRUPT', 500, /damaged/],
    ['EIO', 500, /damaged/],
  ])('%s, by its code, is answered in words', (code, status, words) => {
    const inner = Object.assign(new Error('as the system says'), { code });
    for (const fault of [inner, new Error('around it', { cause: inner })]) {
      const problem = problemOf(fault, undefined);
      expect(problem).toMatchObject({ status });
      expect(problem.detail).toMatch(words);
      expect(problem.mend).toMatch(/\w/);
    }
  });
});

/** Takes all room that is left, to the last block. */
function fill(path: string): void {
  const file = openSync(path, 'w');
  try {
    for (const size of [65536, 4096, 1])
      try {
        for (;;) writeSync(file, Buffer.alloc(size));
      } catch {
        continue;
      }
  } finally {
    closeSync(file);
  }
}

describe('a folder that cannot be written', () => {
  const folders = [
    { which: 'that was used before', used: true },
    { which: 'that is new', used: false },
  ];
  test.for(folders)(
    '$which stops the start with a sentence (skipped where none can be made)',
    async ({ used }, context) => {
      const folder = await newFolder();
      if (used) await (await openStore(folder)).close();
      const way = await readOnly(folder);
      if (way === null) return context.skip('this user may not mount');
      const { status, stderr } = startOn(way);
      expect(status).toBe(1);
      expect(stderr).toMatch(/data folder cannot be written|not allowed/);
    },
  );
});

describe('a damaged database', () => {
  test('a page that is read at the start stops it with what to do', async () => {
    const folder = await newFolder();
    const service = await mount(folder);
    await filledPad(service);
    await service.stop();
    await damage(folder, 'sides');
    const fault: unknown = await openStore(folder).catch((caught: unknown) => caught);
    expect(faultInWords(fault)).toMatch(/database in the data folder is damaged.*backup/);
  });

  test('a page that is read later is told of when it is asked for; the rest goes on', async () => {
    const folder = await newFolder();
    const service = await mount(folder);
    const pad = await filledPad(service);
    const { id } = await newPlan(service, pad.id);
    await service.stop();
    await damage(folder, 'plans');
    const again = await mount(folder);
    const answer = await ask(again, 'GET', `/api/plans/${id}`);
    expect(problemIn(answer)).toMatchObject({ status: 500, type: '/problems/damaged' });
    expect(problemIn(answer).mend).toContain('backup');
    expect(await padAt(again, pad.id)).toEqual(pad);
  });
});

/** Overwrites the first page of a table (SQLite's file format: page n begins at (n - 1) times the page size). */
async function damage(folder: string, table: string): Promise<void> {
  const path = join(folder, 'plyhue.db');
  const client = createClient({ url: `file:${path}` });
  await client.execute('pragma wal_checkpoint(truncate)');
  const { rows } = await client.execute({
    sql: 'select rootpage from sqlite_master where name = ?',
    args: [table],
  });
  client.close();
  const bytes = readFileSync(path);
  const size = bytes.readUInt16BE(16);
  bytes.fill(0xff, (Number(rows[0]!.rootpage) - 1) * size, Number(rows[0]!.rootpage) * size);
  writeFileSync(path, bytes);
}

describe('a picture that is gone from the folder', () => {
  test('is told of where it is asked for; pad, plan, card and guide still answer', async () => {
    const service = await mount(await newFolder());
    const pad = await filledPad(service);
    const plan: Plans.Plan = await newPlan(service, pad.id);
    const { files } = service.edges.store;
    for (const hash of await files.hashesOn('swatches')) await files.remove('swatches', hash);
    const gone = await ask(service, 'GET', pad.sheets[0]!.front!.swatch);
    expect(problemIn(gone)).toMatchObject({ status: 404, type: '/problems/not-found' });
    expect(problemIn(gone).mend).toContain('upload it again');
    expect(await padAt(service, pad.id)).toEqual(pad);
    const drawn = [plan.cards[0]!.picture, plan.guide, `/api/pads/${pad.id}/file`];
    for (const url of drawn) {
      const answer = await ask(service, 'GET', url);
      expect([url, answer.statusCode < 500]).toEqual([url, true]);
    }
  });
});

/** Starts the service in a process of its own, where it is to end at once. */
function startOn(folder: string): { readonly status: number | null; readonly stderr: string } {
  return spawnSync(process.execPath, [compiled('server/main.ts')], {
    env: { ...process.env, DATA_DIR: folder, PORT: '0', DEMO: 'off' },
    encoding: 'utf8',
    timeout: 300_000,
  });
}

describe('two services on one folder', () => {
  test('the second ends with a sentence and the first goes on', async () => {
    const folder = await newFolder();
    const service = await mount(folder);
    const pad = await newPad(service);
    const { status, stderr } = startOn(folder);
    expect(status).toBe(1);
    expect(stderr).toContain('already running on the data folder');
    expect((await padAt(service, pad)).id).toBe(pad);
  });
});

describe('a clock that jumps', () => {
  test('back by years changes no order: things come in the order of their arrival', async () => {
    let year = 2030;
    const clock = (): string => `${year--}-01-01T00:00:00.000Z`;
    const service = await mount(await newFolder(), fakeDesk(), '127.0.0.1', clock);
    const pad = await filledPad(service);
    const [first, second] = [await newPlan(service, pad.id), await newPlan(service, pad.id)];
    expect(first.createdAt > second.createdAt).toBe(true);
    const { plans } = valueOf<{ plans: { id: string }[] }>(await ask(service, 'GET', '/api/plans'));
    expect(plans.map(({ id }) => id)).toEqual([first.id, second.id]);
    const photos = (await padAt(service, pad.id)).photos.map(({ side }) => side);
    expect(photos).toEqual(['front', 'back']);
  });

  test('forward past the end of a code: it is refused with what to do, and a new one works', async () => {
    let now = '2026-05-04T03:00:00.000Z';
    const service = await mount(await newFolder(), fakeDesk(), '0.0.0.0', () => now);
    const code = async (): Promise<string> =>
      (await newCode(service.edges, { person: HOUSE, pad: null }, 'First device')).code;
    const late = await code();
    now = '2031-05-04T03:00:00.000Z';
    const refused = await ask(service, 'POST', '/api/keys', { code: late });
    expect(problemIn(refused).mend).toMatch(/\w/);
    expect((await ask(service, 'POST', '/api/keys', { code: await code() })).statusCode).toBe(201);
    now = '2019-05-04T03:00:00.000Z';
    expect((await ask(service, 'POST', '/api/keys', { code: await code() })).statusCode).toBe(201);
  });
});
