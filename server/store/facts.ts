import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** Single facts about the whole folder, by name. */
export interface Facts {
  at(name: string): Promise<string | null>;
  put(name: string, value: string): Promise<void>;
}

export function factsIn(db: Kysely<Tables>): Facts {
  return {
    at: async (name) =>
      (await db.selectFrom('facts').select('value').where('name', '=', name).executeTakeFirst())
        ?.value ?? null,
    put: async (name, value) => {
      await db
        .insertInto('facts')
        .values({ name, value })
        .onConflict((row) => row.column('name').doUpdateSet({ value }))
        .execute();
    },
  };
}
