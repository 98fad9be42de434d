import { spawn } from 'node:child_process';
import { readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createClient } from '@libsql/client';
import { describe, expect, test } from 'vitest';
import { FolderInUse } from '../../server/store/folder-lock.ts';
import { openStore } from '../../server/store/open-store.ts';
import { compiled } from '../compiled/compiled.ts';
import { newFolder, openForTest } from './folder.ts';
import { pad } from './pad-row.ts';

describe('a data folder', () => {
  test('belongs to one opener at a time, and is free again when that one closes', async () => {
    const folder = await newFolder();
    const store = await openForTest(folder);
    await expect(openStore(folder)).rejects.toThrow(FolderInUse);
    await store.close();
    await (await openForTest(folder)).close();
  });

  test('a second process is refused with a sentence; after a kill the folder is free', async () => {
    const folder = await newFolder();
    const held = await holdInProcess(folder);
    await expect(openStore(folder)).rejects.toThrow(/already running on the data folder/);
    held.process.kill('SIGKILL');
    await held.ended;
    const store = await openForTest(folder);
    expect(await store.read.pads.at('held')).toEqual(pad('held'));
  });

  test('writes ahead in a log and syncs every commit', async () => {
    const folder = await newFolder();
    const store = await openForTest(folder);
    const client = createClient({ url: `file:${join(folder, 'plyhue.db')}` });
    const mode = await client.execute('pragma journal_mode');
    const sync = await client.execute('pragma synchronous');
    client.close();
    await store.close();
    expect(mode.rows[0]?.journal_mode).toBe('wal');
    // https://sqlite.org/pragma.html#pragma_synchronous: 2 is FULL
    expect(sync.rows[0]?.synchronous).toBe(2);
  });

  test('refuses a database of a later version', async () => {
    const folder = await newFolder();
    await (await openForTest(folder)).close();
    const client = createClient({ url: `file:${join(folder, 'plyhue.db')}` });
    await client.execute('insert into steps (step) values (999)');
    client.close();
    await expect(openStore(folder)).rejects.toThrow(/later version/);
    await expect(openStore(folder)).rejects.toThrow(/later version/);
  });

  test('refuses a damaged database', async () => {
    const folder = await newFolder();
    await writeFile(join(folder, 'plyhue.db'), 'not a database at all, only words'.repeat(300));
    await expect(openStore(folder)).rejects.toMatchObject({
      code: 'SQLITE_NOTADB',
    });
  });
});

describe('the sweep at the start', () => {
  test('clears half-written files and files that nothing owns, and keeps the others', async () => {
    const folder = await newFolder();
    const store = await openForTest(folder);
    const owned = await store.files.keepBytes('photos', Buffer.from('owned'));
    const lone = await store.files.keepBytes('photos', Buffer.from('lone'));
    const picture = await store.files.keepBytes('pictures', Buffer.from('picture'));
    await store.write((records) =>
      records.photos.add({
        id: 'p',
        pad: 'a',
        face: 'front',
        arrangement: 'one',
        hash: owned,
        picture,
        width: 10,
        height: 10,
        white: { kind: 'none', corners: null },
        notes: [],
        createdAt: '2026-01-02T03:04:05.000Z',
        revision: 1,
      }),
    );
    await writeFile(join(folder, 'incoming', 'half'), 'half of a pho');
    await store.close();
    const again = await openForTest(folder);
    expect(again.swept).toEqual({ cleared: 2, missing: [] });
    expect(await again.files.has('photos', owned)).toBe(true);
    expect(await again.files.has('photos', lone)).toBe(false);
    expect(await readdir(join(folder, 'incoming'))).toEqual([]);
  });

  test('reports a file that a row names but that is gone', async () => {
    const folder = await newFolder();
    const store = await openForTest(folder);
    const hash = await store.files.keepBytes('swatches', Buffer.from('swatch'));
    await store.write((records) =>
      records.plans.add(
        {
          id: 'p',
          pad: 'a',
          cards: 1,
          value: 1,
          createdAt: '2026-01-02T03:04:05.000Z',
          from: null,
          anew: false,
        },
        {},
        [hash],
      ),
    );
    await store.files.remove('swatches', hash);
    await store.close();
    const again = await openForTest(folder);
    expect(again.swept.missing).toEqual([{ shelf: 'swatches', hash }]);
    await expect(again.files.read('swatches', hash)).rejects.toMatchObject({ kind: 'not-found' });
  });
});

interface Held {
  readonly process: ReturnType<typeof spawn>;
  readonly ended: Promise<unknown>;
}

/** Another process that opens the folder, keeps a pad and holds on. */
async function holdInProcess(folder: string): Promise<Held> {
  const child = spawn(process.execPath, [compiled('tests/store/hold-folder.ts'), folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise((resolve) => child.on('exit', resolve));
  await new Promise((resolve) => child.stdout.once('data', resolve));
  return { process: child, ended };
}
