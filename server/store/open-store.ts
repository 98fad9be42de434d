import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Kysely, sql } from 'kysely';
import { LibsqlDialect, openFile } from './dialect.ts';
import { openFiles } from './files.ts';
import type { Files } from './files.ts';
import { lockFolder } from './folder-lock.ts';
import { migrate } from './migrations.ts';
import { recordsIn } from './records.ts';
import type { Records } from './records.ts';
import { sweep } from './sweep.ts';
import type { Swept } from './sweep.ts';
import type { Tables } from './tables.ts';

/** The data folder: a database and files beside it. */
export interface Store {
  readonly read: Records;
  readonly files: Files;
  /** What was put in order when the folder was opened. */
  readonly swept: Swept;
  /** Runs the work in one transaction; all of it holds when the promise is kept, or none of it. */
  write<T>(work: (records: Records) => Promise<T>): Promise<T>;
  /** True when the database answers. */
  answers(): Promise<boolean>;
  close(): Promise<void>;
}

/**
 * Opens a data folder for this process alone: takes it, brings the tables up to date, sweeps.
 *
 * Every commit is synced to the disk (write-ahead log, synchronous = FULL). Writing transactions stand
 * in line inside the process, because SQLite lets in only one at a time.
 */
export async function openStore(folder: string): Promise<Store> {
  await mkdir(folder, { recursive: true });
  const lock = await lockFolder(folder);
  try {
    const db = new Kysely<Tables>({
      dialect: new LibsqlDialect(openFile(join(folder, 'plyhue.db'))),
    });
    await settle(db);
    await migrate(db);
    const files = await openFiles(folder);
    const swept = await sweep(db, files);
    return storeOn(db, files, swept, lock.release);
  } catch (fault) {
    lock.release();
    throw fault;
  }
}

/** The log lives as long as the file; the sync level belongs to each connection and is FULL unless set otherwise. */
async function settle(db: Kysely<Tables>): Promise<void> {
  await sql`pragma journal_mode = wal`.execute(db);
  const { rows } = await sql<{ synchronous: number }>`pragma synchronous`.execute(db);
  if ((rows[0]?.synchronous ?? 0) < 2)
    throw new Error('Expected a database that syncs every commit to the disk (synchronous = FULL)');
}

function storeOn(db: Kysely<Tables>, files: Files, swept: Swept, release: () => void): Store {
  let line: Promise<unknown> = Promise.resolve();
  return {
    read: recordsIn(db),
    files,
    swept,
    write: (work) => {
      const turn = line.then(() =>
        db.transaction().execute((transaction) => work(recordsIn(transaction))),
      );
      line = turn.catch(() => null);
      return turn;
    },
    answers: async () => {
      try {
        await sql`select 1`.execute(db);
        return true;
      } catch {
        return false;
      }
    },
    close: async () => {
      await line;
      await db.destroy();
      release();
    },
  };
}
