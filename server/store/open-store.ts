import { randomUUID } from 'node:crypto';
import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { Kysely, sql } from 'kysely';
import type { Transaction } from 'kysely';
import type { Whose } from './asker.ts';
import { LibsqlDialect, openFile } from './dialect.ts';
import { openFiles } from './files.ts';
import type { Files } from './files.ts';
import { lockFolder } from './folder-lock.ts';
import { migrate } from './migrations.ts';
import { recordsIn } from './records.ts';
import type { Records } from './records.ts';
import type { Bucket } from './bucket.ts';
import { sweep, sweepWaiting } from './sweep.ts';
import type { Swept } from './sweep.ts';
import type { Tables } from './tables.ts';
import { waitingUploads } from './uploads.ts';
import type { WaitingUploads } from './uploads.ts';

/** What is kept: a database and files beside it. */
export interface Store {
  readonly read: Records;
  readonly files: Files;
  /** What was put in order when it was opened. */
  readonly swept: Swept;
  /** Runs the work in one transaction; all of it holds when the promise is kept, or none of it. */
  write<T>(work: (records: Records) => Promise<T>): Promise<T>;
  /** Photos that wait to be read, for whichever process takes them. */
  readonly waiting: WaitingUploads;
  /** True when the database and the files answer. */
  answers(): Promise<boolean>;
  /** Tells every process that shares this store that a pad has changed. */
  tell(pad: string): void;
  /** Calls back with each pad that any of them tells of. */
  hear(call: (pad: string) => void): Promise<void>;
  /** The same store for whoever asks at the moment: it sees and adds only what is theirs. */
  askedBy(whose: Whose): Pick<Store, 'read' | 'write'>;
  close(): Promise<void>;
}

/** The one process of a data folder. */
const ALONE = 'alone';
/** A process that has said nothing for so long is taken for dead, and others read its photos; in milliseconds. */
const PATIENCE = 30_000;

/** How often a process looks into the bucket for photos that wait for nothing, and how old those are; in milliseconds. */
const SWEEPING = 3_600_000;
const FORGOTTEN = 86_400_000;

/** A database and a bucket that several processes share. */
export interface Shared {
  /** `postgres://...` */
  readonly database: string;
  readonly files: Bucket;
}

/**
 * Opens a data folder for this process alone: takes it, brings the tables up to date, sweeps. With a shared
 * store the folder holds only what is on its way and copies, and each process has one of its own.
 *
 * Every commit is synced to the disk. Writing transactions stand in line inside the process, because
 * SQLite lets in only one at a time; those of several processes stand in line in the database.
 */
export async function openStore(
  folder: string,
  shared: Shared | null = null,
  patience = PATIENCE,
): Promise<Store> {
  await mkdir(folder, { recursive: true });
  const lock = await lockFolder(folder);
  try {
    return shared === null
      ? await openOwn(folder, lock.release)
      : await openShared(folder, shared, patience, lock.release);
  } catch (fault) {
    lock.release();
    throw fault;
  }
}

async function openOwn(folder: string, release: () => void): Promise<Store> {
  const db = new Kysely<Tables>({
    dialect: new LibsqlDialect(openFile(join(folder, 'plyhue.db'))),
  });
  await settle(db);
  await migrate(db, 'sqlite');
  const files = await openFiles(folder);
  const waiting = waitingUploads(db, { worker: ALONE, patience: PATIENCE, rowLocks: false });
  // Nobody else is on this folder: what an earlier process had taken is free again.
  await waiting.handBack();
  const held = await waiting.held();
  const swept = await sweep(db, files, new Set(held.map(({ file }) => file)));
  const line = writersOn(db, () => Promise.resolve());
  const ears: ((pad: string) => void)[] = [];
  return {
    ...line.askedBy(() => null),
    askedBy: line.askedBy,
    files,
    swept,
    waiting: inLine(waiting, line.stand),
    answers: () => answers(db),
    tell: (pad) => {
      for (const ear of ears) ear(pad);
    },
    hear: (call) => {
      ears.push(call);
      return Promise.resolve();
    },
    close: async () => {
      await line.end();
      await db.destroy();
      release();
    },
  };
}

/**
 * What another process is about to keep is not told from what nothing owns, so the shelves are not swept here. A photo
 * that waits has a name of its own; one that no row has named for a day is of a process that died, or of a pad
 * that was deleted while it was read. The
 * clients of both are loaded only when they are asked for; most people never need them.
 */
async function openShared(
  folder: string,
  shared: Shared,
  patience: number,
  release: () => void,
): Promise<Store> {
  const { openSharedDatabase } = await import('./shared-database.ts');
  const { bucketAnswers, openSharedFiles } = await import('./shared-files.ts');
  const database = openSharedDatabase(shared.database);
  try {
    await migrate(database.db, 'postgres');
    const files = await openSharedFiles(folder, shared.files);
    const { db } = database;
    const line = writersOn(db, (transaction) => database.takeTurn(transaction));
    const waiting = waitingUploads(db, { worker: randomUUID(), patience, rowLocks: true });
    // A bucket that does not answer now is swept at the next turn.
    const tidy = (): void =>
      void sweepWaiting(waiting, files, new Date(Date.now() - FORGOTTEN)).catch(() => undefined);
    const clock = setInterval(tidy, SWEEPING).unref();
    tidy();
    return {
      ...line.askedBy(() => null),
      askedBy: line.askedBy,
      files,
      swept: { cleared: 0, missing: [] },
      waiting,
      answers: async () => (await answers(db)) && (await bucketAnswers(files)),
      tell: (pad) => database.tell(pad),
      hear: (call) => database.hear(call),
      close: async () => {
        clearInterval(clock);
        await line.end();
        await database.close();
        release();
      },
    };
  } catch (fault) {
    await database.close();
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

type Stand = <T>(work: () => Promise<T>) => Promise<T>;

/** SQLite lets in one writer at a time, so the statements of the waiting list stand in the line of the others. */
function inLine(waiting: WaitingUploads, stand: Stand): WaitingUploads {
  return {
    ...waiting,
    claim: (now) => stand(() => waiting.claim(now)),
    putBack: (id, until) => stand(() => waiting.putBack(id, until)),
    renew: (now) => stand(() => waiting.renew(now)),
    handBack: () => stand(() => waiting.handBack()),
  };
}

/** The line in which writing transactions stand; `takeTurn` is the first thing that each does. */
function writersOn(
  db: Kysely<Tables>,
  takeTurn: (transaction: Transaction<Tables>) => Promise<void>,
): { askedBy: Store['askedBy']; stand: Stand; end: () => Promise<void> } {
  let line: Promise<unknown> = Promise.resolve();
  const stand: Stand = (work) => {
    const turn = line.then(work);
    line = turn.catch(() => null);
    return turn;
  };
  return {
    stand,
    askedBy: (whose) => ({
      read: recordsIn(db, whose),
      write: (work) =>
        stand(() =>
          db.transaction().execute(async (transaction) => {
            await takeTurn(transaction);
            return work(recordsIn(transaction, whose));
          }),
        ),
    }),
    end: async () => {
      await line;
    },
  };
}

async function answers(db: Kysely<Tables>): Promise<boolean> {
  try {
    await sql`select 1`.execute(db);
    return true;
  } catch {
    return false;
  }
}
