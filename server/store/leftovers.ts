import type { Kysely } from 'kysely';
import { units } from '../lengths/length.ts';
import { isOfSeenPad } from './asker.ts';
import type { Whose } from './asker.ts';
import type { LeftoverRow } from './rows.ts';
import type { Tables } from './tables.ts';

export interface Leftovers {
  at(id: string): Promise<LeftoverRow | null>;
  /** The largest first. */
  ofPad(pad: string): Promise<LeftoverRow[]>;
  add(leftover: LeftoverRow): Promise<void>;
  remove(id: string): Promise<void>;
}

export function leftoversIn(db: Kysely<Tables>, whose: Whose): Leftovers {
  const seen = () => db.selectFrom('leftovers').selectAll().where(isOfSeenPad(whose));
  return {
    at: async (id) => {
      const row = await seen().where('id', '=', id).executeTakeFirst();
      return row === undefined ? null : read(row);
    },
    ofPad: async (pad) =>
      (await seen().where('pad', '=', pad).orderBy('id').execute())
        .map(read)
        .sort((a, b) => b.size.width * b.size.height - a.size.width * a.size.height),
    add: async ({ id, pad, sheet, label, size, plan, createdAt }) => {
      const { width, height } = size;
      await db
        .insertInto('leftovers')
        .values({ id, pad, sheet, label, width, height, plan, created_at: createdAt })
        .execute();
    },
    remove: async (id) => {
      await db.deleteFrom('leftovers').where('id', '=', id).execute();
    },
  };
}

function read({ width, height, created_at, ...row }: Tables['leftovers']): LeftoverRow {
  return {
    ...row,
    size: { width: units(width), height: units(height) },
    createdAt: created_at,
  };
}
