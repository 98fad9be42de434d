import type { Kysely } from 'kysely';
import { isOfSeenPad } from './asker.ts';
import type { Whose } from './asker.ts';
import type { SheetRow } from './rows.ts';
import type { Tables } from './tables.ts';

export interface Sheets {
  at(id: string): Promise<SheetRow | null>;
  /** In the order of the pad. */
  ofPad(pad: string): Promise<SheetRow[]>;
  add(sheet: SheetRow): Promise<void>;
  put(sheet: SheetRow): Promise<void>;
  remove(id: string): Promise<void>;
}

export function sheetsIn(db: Kysely<Tables>, whose: Whose): Sheets {
  return {
    at: async (id) =>
      (await db
        .selectFrom('sheets')
        .selectAll()
        .where('id', '=', id)
        .where(isOfSeenPad(whose))
        .executeTakeFirst()) ?? null,
    ofPad: (pad) =>
      db
        .selectFrom('sheets')
        .selectAll()
        .where('pad', '=', pad)
        .where(isOfSeenPad(whose))
        .orderBy('place')
        .orderBy('id')
        .execute(),
    add: async (sheet) => {
      await db.insertInto('sheets').values(sheet).execute();
    },
    put: async (sheet) => {
      await db
        .updateTable('sheets')
        .set({ ...sheet, revision: sheet.revision + 1 })
        .where('id', '=', sheet.id)
        .execute();
    },
    remove: async (id) => {
      await db.deleteFrom('sheets').where('id', '=', id).execute();
    },
  };
}
