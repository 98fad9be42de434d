import type { Kysely } from 'kysely';
import { isOwn, ownerNow } from './asker.ts';
import type { Whose } from './asker.ts';
import { docOf } from './doc.ts';
import type { Layout } from '../layouts/layout.ts';
import type { LayoutRow } from './rows.ts';
import type { Tables } from './tables.ts';
import { nextTurn } from './turn.ts';

/** Layouts of her own; those of the catalogue are in the program. */
export interface Layouts {
  all(): Promise<LayoutRow[]>;
  at(id: string): Promise<LayoutRow | null>;
  /** Whether anyone has a layout of this id. */
  isTaken(id: string): Promise<boolean>;
  add(row: LayoutRow): Promise<void>;
  /** Puts a layout in the place of the one with its id. */
  replace(layout: Layout): Promise<void>;
  remove(id: string): Promise<void>;
}

export function layoutsIn(db: Kysely<Tables>, whose: Whose): Layouts {
  return {
    all: async () =>
      (
        await db.selectFrom('layouts').selectAll().where(isOwn(whose)).orderBy('turn').execute()
      ).map(read),
    at: async (id) => {
      const row = await db
        .selectFrom('layouts')
        .selectAll()
        .where('id', '=', id)
        .where(isOwn(whose))
        .executeTakeFirst();
      return row === undefined ? null : read(row);
    },
    isTaken: async (id) => {
      const row = await db
        .selectFrom('layouts')
        .select('id')
        .where('id', '=', id)
        .executeTakeFirst();
      return row !== undefined;
    },
    add: async ({ layout, createdAt }) => {
      const turn = await nextTurn(db, 'layouts');
      await db
        .insertInto('layouts')
        .values({
          id: layout.id,
          doc: docOf(layout),
          created_at: createdAt,
          turn,
          owner: ownerNow(whose),
        })
        .execute();
    },
    replace: async (layout) => {
      await db
        .updateTable('layouts')
        .set({ doc: docOf(layout) })
        .where('id', '=', layout.id)
        .where(isOwn(whose))
        .execute();
    },
    remove: async (id) => {
      await db.deleteFrom('layouts').where('id', '=', id).execute();
    },
  };
}

function read(row: Tables['layouts']): LayoutRow {
  return { layout: JSON.parse(row.doc) as Layout, createdAt: row.created_at };
}
