import type { Kysely } from 'kysely';
import { HOUSE, ownerNow } from './asker.ts';
import type { Whose } from './asker.ts';
import type { Tables } from './tables.ts';

/** A request that carried a key: what it asked, as a fingerprint, and the ids of what it made. */
export interface KeyedRequest {
  readonly key: string;
  readonly fingerprint: string;
  readonly made: readonly string[];
  readonly createdAt: string;
}

export interface Requests {
  at(key: string): Promise<KeyedRequest | null>;
  add(request: KeyedRequest): Promise<void>;
}

export function requestsIn(db: Kysely<Tables>, whose: Whose): Requests {
  /** Two people may choose the same word. */
  const own = (key: string): string => {
    const owner = ownerNow(whose);
    return owner === HOUSE ? key : `${owner} ${key}`;
  };
  return {
    at: async (key) => {
      const row = await db
        .selectFrom('requests')
        .selectAll()
        .where('key', '=', own(key))
        .executeTakeFirst();
      if (row === undefined) return null;
      const { fingerprint, made, created_at: createdAt } = row;
      return { key, fingerprint, made: JSON.parse(made) as string[], createdAt };
    },
    add: async ({ key, fingerprint, made, createdAt }) => {
      await db
        .insertInto('requests')
        .values({ key: own(key), fingerprint, made: JSON.stringify(made), created_at: createdAt })
        .execute();
    },
  };
}
