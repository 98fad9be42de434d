import { sql } from 'kysely';
import type { Kysely } from 'kysely';
import { isOfSeenPad, ownerNow } from './asker.ts';
import type { Whose } from './asker.ts';
import type { Face } from './rows.ts';
import type { Tables } from './tables.ts';
import { nextTurn } from './turn.ts';

/** A photo that is safe and waits to be read, by whichever process takes it. */
export interface UploadRow {
  readonly id: string;
  readonly pad: string;
  /** Who sent it. */
  readonly owner: string;
  readonly face: Face;
  readonly arrangement: string;
  /** SHA-256 of what was sent, and the name under which it waits. */
  readonly hash: string;
  readonly file: string;
  /** Bytes; 0 for one from before sizes were noted. */
  readonly size: number;
  /** What was said of it, as JSON. */
  readonly told: string;
  readonly createdAt: string;
  /** True when the sender has its answer already and asks later what came of it. */
  readonly acknowledged: boolean;
  /** How often a process has begun to read it. */
  readonly tries: number;
  /** What came of it: the photo, or as JSON the problem that kept it from being read; null for both while it waits. */
  readonly photo: string | null;
  readonly problem: string | null;
}

/** Which process reads it, and until when that holds unless it says more. */
export interface Lease {
  readonly worker: string;
  readonly until: string;
}

export interface Uploads {
  at(id: string): Promise<UploadRow | null>;
  /** In the order of their arrival. */
  ofPad(pad: string): Promise<UploadRow[]>;
  /** How many photos of the asker wait whose sender has an answer already, and how many bytes they are together. */
  waiting(): Promise<{ readonly count: number; readonly bytes: number }>;
  /** With a lease for a process that reads it at once. */
  add(upload: Omit<UploadRow, 'owner' | 'tries'>, lease: Lease | null): Promise<void>;
  /** Notes what came of it. */
  settle(
    id: string,
    came: { readonly photo: string } | { readonly problem: string },
  ): Promise<void>;
  remove(id: string): Promise<void>;
}

export function uploadsIn(db: Kysely<Tables>, whose: Whose): Uploads {
  return {
    at: async (id) => {
      const row = await db
        .selectFrom('uploads')
        .selectAll()
        .where('id', '=', id)
        .where(isOfSeenPad(whose))
        .executeTakeFirst();
      return row === undefined ? null : read(row);
    },
    ofPad: async (pad) =>
      (
        await db
          .selectFrom('uploads')
          .selectAll()
          .where('pad', '=', pad)
          .where(isOfSeenPad(whose))
          .orderBy('turn')
          .execute()
      ).map(read),
    waiting: async () => {
      const { count, bytes } = await db
        .selectFrom('uploads')
        .select((each) => [
          each.fn.countAll<number | string>().as('count'),
          each.fn.sum<number | string | null>('size').as('bytes'),
        ])
        .where('owner', '=', ownerNow(whose))
        .where('acknowledged', '=', 1)
        .where('photo', 'is', null)
        .where('problem', 'is', null)
        .executeTakeFirstOrThrow();
      return { count: Number(count), bytes: Number(bytes ?? 0) };
    },
    add: async ({ createdAt, acknowledged, ...upload }, lease) => {
      await db
        .insertInto('uploads')
        .values({
          ...upload,
          owner: ownerNow(whose),
          created_at: createdAt,
          acknowledged: acknowledged ? 1 : 0,
          tries: lease === null ? 0 : 1,
          worker: lease?.worker ?? null,
          until: lease?.until ?? null,
          turn: await nextTurn(db, 'uploads'),
        })
        .execute();
    },
    settle: async (id, came) => {
      await db
        .updateTable('uploads')
        .set({ ...came, worker: null, until: null })
        .where('id', '=', id)
        .execute();
    },
    remove: async (id) => {
      await db.deleteFrom('uploads').where('id', '=', id).execute();
    },
  };
}

/** The work that waits, for the process of one worker; each is one statement, so none needs a turn among the writers. */
export interface WaitingUploads {
  readonly lease: (now: string) => Lease;
  /** Takes the first one that nobody reads, or whose reader has not been heard of; null when there is none. */
  claim(now: string): Promise<UploadRow | null>;
  /**
   * Gives one back that could not be read, to rest until then. It is not renewed any more even when this cannot be
   * written; then it is free when its lease has run out.
   */
  putBack(id: string, until: string): Promise<void>;
  /** Says that this process still reads what it has taken. */
  renew(now: string): Promise<void>;
  /** Gives back what it has taken. */
  handBack(): Promise<void>;
  /** The names under which photos wait, and what is in them. */
  held(): Promise<{ readonly file: string; readonly hash: string }[]>;
}

export interface WaitingSettings {
  readonly worker: string;
  /** How long a process that is not heard of keeps what it has taken, in milliseconds. */
  readonly patience: number;
  /** PostgreSQL locks rows; in SQLite only one process writes. */
  readonly rowLocks: boolean;
}

/**
 * Claims by row locks: of two processes that ask at once, the second skips the row that the first is taking
 * (PostgreSQL, SELECT ... FOR UPDATE SKIP LOCKED). The lease outlives the lock, so that no connection is held while
 * a photo is read. Should a clock jump and two read one photo, the second finds it there.
 */
export function waitingUploads(
  db: Kysely<Tables>,
  { worker, patience, rowLocks }: WaitingSettings,
): WaitingUploads {
  const lease = (now: string): Lease => ({
    worker,
    until: new Date(Date.parse(now) + patience).toISOString(),
  });
  const waits = (now: string) =>
    sql<boolean>`photo is null and problem is null and (until is null or until < ${now})`;
  /** Those that this process does not read any more though their rows may say so. */
  const left = new Set<string>();
  return {
    lease,
    claim: async (now) => {
      // Most of the time nothing waits: that is found out without writing.
      const any = await db.selectFrom('uploads').select('id').where(waits(now)).limit(1).execute();
      if (any.length === 0) return null;
      const { until } = lease(now);
      const skip = rowLocks ? sql`for update skip locked` : sql``;
      const { rows } = await sql<Tables['uploads']>`
        update uploads set worker = ${worker}, until = ${until}, tries = tries + 1
        where id = (select id from uploads where ${waits(now)} order by turn limit 1 ${skip})
        returning *`.execute(db);
      if (rows[0] === undefined) return null;
      left.delete(rows[0].id);
      return read(rows[0]);
    },
    putBack: async (id, until) => {
      left.add(id);
      await db
        .updateTable('uploads')
        .set({ worker: null, until })
        .where('id', '=', id)
        .where('worker', '=', worker)
        .execute();
      left.delete(id);
    },
    renew: async (now) => {
      await db
        .updateTable('uploads')
        .set({ until: lease(now).until })
        .where('worker', '=', worker)
        .$if(left.size > 0, (those) => those.where('id', 'not in', [...left]))
        .execute();
    },
    handBack: async () => {
      await db
        .updateTable('uploads')
        .set({ worker: null, until: null })
        .where('worker', '=', worker)
        .execute();
    },
    held: () =>
      db
        .selectFrom('uploads')
        .select(['file', 'hash'])
        .where('photo', 'is', null)
        .where('problem', 'is', null)
        .execute(),
  };
}

function read(row: Tables['uploads']): UploadRow {
  const { id, pad, owner, face, arrangement, hash, file, size, told, tries, photo } = row;
  const { problem } = row;
  return {
    id,
    pad,
    owner,
    face,
    arrangement,
    hash,
    file,
    size,
    told,
    createdAt: row.created_at,
    acknowledged: row.acknowledged === 1,
    tries,
    photo,
    problem,
  };
}
