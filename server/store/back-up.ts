import { existsSync } from 'node:fs';
import { copyFile, mkdir, open, readdir, rm } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { Kysely, sql } from 'kysely';
import { LibsqlDialect, openFile } from './dialect.ts';
import { SHELVES, openFiles } from './files.ts';
import { lockFolder } from './folder-lock.ts';
import { migrate } from './migrations.ts';
import { ownedHashes } from './sweep.ts';
import type { Tables } from './tables.ts';
import { waitingUploads } from './uploads.ts';

/** How many files a copy holds beside the database. */
export interface Copied {
  readonly files: number;
}

/**
 * Copies a data folder into an empty one, also while the service runs on it: the database as it was at one
 * moment (SQLite's VACUUM INTO), then every file that it owns. Files never change and are only removed
 * at a start, so those of that moment are all still there.
 */
export async function backUp(from: string, to: string): Promise<Copied> {
  await mustBeEmpty(to);
  const target = join(to, 'plyhue.db');
  const source = openFile(join(from, 'plyhue.db'));
  try {
    await source.execute({ sql: 'vacuum into ?', args: [resolve(target)] });
  } finally {
    source.close();
  }
  await syncFile(target);
  return copyOwned(from, to);
}

/** Makes a data folder again from a copy; the folder must be empty and free. */
export async function restore(copy: string, to: string): Promise<Copied> {
  await mustBeEmpty(to);
  const lock = await lockFolder(to);
  try {
    await copyFile(join(copy, 'plyhue.db'), join(to, 'plyhue.db'));
    await syncFile(join(to, 'plyhue.db'));
    return await copyOwned(copy, to);
  } catch (fault) {
    await rm(join(to, 'plyhue.db'), { force: true });
    throw fault;
  } finally {
    lock.release();
  }
}

async function copyOwned(from: string, to: string): Promise<Copied> {
  const db = new Kysely<Tables>({ dialect: new LibsqlDialect(openFile(join(to, 'plyhue.db'))) });
  try {
    const { rows } = await sql<{ integrity_check: string }>`pragma integrity_check`.execute(db);
    if (rows[0]?.integrity_check !== 'ok')
      throw new CannotCopy(
        'The copy of the database is damaged; nothing was changed in the original.',
      );
    // The copy may be from before a table that is asked below.
    await migrate(db, 'sqlite');
    const owned = await ownedHashes(db);
    const [source, target] = [await openFiles(from), await openFiles(to)];
    let files = 0;
    for (const shelf of SHELVES)
      for (const hash of owned[shelf]) {
        if (!(await source.has(shelf, hash))) continue;
        const path = target.pathOf(shelf, hash);
        await mkdir(dirname(path), { recursive: true });
        await copyFile(source.pathOf(shelf, hash), path);
        await syncFile(path);
        files += 1;
      }
    const waiting = waitingUploads(db, { worker: '', patience: 0, rowLocks: false });
    for (const { file, hash } of await waiting.held()) {
      const path = join(to, 'waiting', file);
      // One that has been read since the copy of the database was made lies on the shelf by now.
      const places = [join(from, 'waiting', file), source.pathOf('photos', hash)];
      const place = places.find((each) => existsSync(each));
      if (place === undefined) continue;
      await copyFile(place, path);
      await syncFile(path);
      files += 1;
    }
    return { files };
  } finally {
    await db.destroy();
  }
}

/** Said to her as it is. */
export class CannotCopy extends Error {
  override readonly name = 'CannotCopy';
}

async function mustBeEmpty(folder: string): Promise<void> {
  await mkdir(folder, { recursive: true });
  if ((await readdir(folder)).length > 0)
    throw new CannotCopy(
      `Expected an empty folder but there is something in ${folder}. Name another.`,
    );
}

async function syncFile(path: string): Promise<void> {
  const file = await open(path, 'r+');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}
