import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

export interface PersonRow {
  readonly id: string;
  readonly name: string;
  readonly createdAt: string;
}

/** What a device may do, and the hash of the word by which it is known. */
export interface KeyRow {
  readonly id: string;
  readonly person: string;
  readonly pad: string | null;
  readonly name: string;
  readonly hash: string;
  readonly createdAt: string;
}

/** What a code gives to the first who brings it. */
export interface CodeRow {
  readonly hash: string;
  readonly person: string;
  readonly pad: string | null;
  readonly name: string;
  readonly expiresAt: string;
}

export interface Keys {
  at(id: string): Promise<KeyRow | null>;
  /** The oldest first. */
  ofPerson(person: string): Promise<KeyRow[]>;
  add(key: KeyRow): Promise<void>;
  remove(id: string): Promise<void>;
  addCode(code: CodeRow): Promise<void>;
  /** Gives a code that has not expired, and takes it away; expired ones go too. */
  takeCode(hash: string, now: string): Promise<CodeRow | null>;
  people(): Promise<PersonRow[]>;
  addPerson(person: PersonRow): Promise<void>;
}

export function keysIn(db: Kysely<Tables>): Keys {
  return {
    at: async (id) => {
      const row = await db.selectFrom('keys').selectAll().where('id', '=', id).executeTakeFirst();
      return row === undefined ? null : read(row);
    },
    ofPerson: async (person) =>
      (
        await db
          .selectFrom('keys')
          .selectAll()
          .where('person', '=', person)
          .orderBy('created_at')
          .orderBy('id')
          .execute()
      ).map(read),
    add: async ({ id, person, pad, name, hash, createdAt }) => {
      const row = { id, person, pad, name, hash, created_at: createdAt };
      await db.insertInto('keys').values(row).execute();
    },
    remove: async (id) => {
      await db.deleteFrom('keys').where('id', '=', id).execute();
    },
    addCode: async ({ hash, person, pad, name, expiresAt }) => {
      const row = { hash, person, pad, name, expires_at: expiresAt };
      await db.insertInto('codes').values(row).execute();
    },
    takeCode: async (hash, now) => {
      await db.deleteFrom('codes').where('expires_at', '<=', now).execute();
      const row = await db
        .selectFrom('codes')
        .selectAll()
        .where('hash', '=', hash)
        .executeTakeFirst();
      if (row === undefined) return null;
      await db.deleteFrom('codes').where('hash', '=', hash).execute();
      const { person, pad, name, expires_at: expiresAt } = row;
      return { hash, person, pad, name, expiresAt };
    },
    people: async () =>
      (await db.selectFrom('people').selectAll().orderBy('created_at').orderBy('id').execute()).map(
        ({ id, name, created_at: createdAt }) => ({ id, name, createdAt }),
      ),
    addPerson: async ({ id, name, createdAt }) => {
      await db.insertInto('people').values({ id, name, created_at: createdAt }).execute();
    },
  };
}

function read({ id, person, pad, name, hash, created_at: createdAt }: Tables['keys']): KeyRow {
  return { id, person, pad, name, hash, createdAt };
}
