import type { Kysely } from 'kysely';
import { isSeenPad, ownerNow } from './asker.ts';
import type { Whose } from './asker.ts';
import { units } from '../lengths/length.ts';
import type { PadRow } from './rows.ts';
import type { Tables } from './tables.ts';

export interface Pads {
  all(): Promise<PadRow[]>;
  at(id: string): Promise<PadRow | null>;
  add(pad: PadRow): Promise<void>;
  rename(id: string, name: string): Promise<void>;
  /** Notes that something in the pad has changed. */
  touch(id: string): Promise<void>;
  /** How many sheets each pad has. */
  sheetCounts(): Promise<Map<string, number>>;
  /** Removes the pad with all that belongs to it. */
  remove(id: string): Promise<void>;
  /** The last revision of a pad that was removed, 0 for one that never was here: a window may still know it. */
  lastRevision(id: string): Promise<number>;
}

export function padsIn(db: Kysely<Tables>, whose: Whose): Pads {
  return {
    all: async () =>
      (
        await db
          .selectFrom('pads')
          .selectAll()
          .where(isSeenPad(whose))
          .orderBy('created_at')
          .orderBy('id')
          .execute()
      ).map(read),
    at: async (id) => {
      const row = await db
        .selectFrom('pads')
        .selectAll()
        .where('id', '=', id)
        .where(isSeenPad(whose))
        .executeTakeFirst();
      return row === undefined ? null : read(row);
    },
    add: async ({ id, name, sheetSize, createdAt, revision }) => {
      const { width, height } = sheetSize;
      await db
        .insertInto('pads')
        .values({
          id,
          name,
          width,
          height,
          created_at: createdAt,
          revision,
          owner: ownerNow(whose),
        })
        .execute();
    },
    rename: async (id, name) => {
      await db
        .updateTable('pads')
        .set((now) => ({ name, revision: now('revision', '+', 1) }))
        .where('id', '=', id)
        .execute();
    },
    touch: async (id) => {
      await db
        .updateTable('pads')
        .set((now) => ({ revision: now('revision', '+', 1) }))
        .where('id', '=', id)
        .execute();
    },
    sheetCounts: async () => {
      const rows = await db
        .selectFrom('sheets')
        .select((now) => ['pad', now.fn.countAll<number | string>().as('count')])
        .groupBy('pad')
        .execute();
      return new Map(rows.map(({ pad, count }) => [pad, Number(count)]));
    },
    remove: async (id) => {
      const plans = db.selectFrom('plans').select('id').where('pad', '=', id);
      await db.deleteFrom('plan_swatches').where('plan', 'in', plans).execute();
      await db.deleteFrom('ticks').where('plan', 'in', plans).execute();
      for (const table of [
        'plans',
        'sheets',
        'sides',
        'photos',
        'uploads',
        'leftovers',
        'keys',
        'codes',
      ] as const)
        await db.deleteFrom(table).where('pad', '=', id).execute();
      const { revision = 0 } =
        (await db.selectFrom('pads').select('revision').where('id', '=', id).executeTakeFirst()) ??
        {};
      await db
        .insertInto('gone_pads')
        .values({ id, revision })
        .onConflict((gone) => gone.column('id').doUpdateSet({ revision }))
        .execute();
      await db.deleteFrom('pads').where('id', '=', id).execute();
    },
    lastRevision: async (id) =>
      (await db.selectFrom('gone_pads').select('revision').where('id', '=', id).executeTakeFirst())
        ?.revision ?? 0,
  };
}

function read(row: Tables['pads']): PadRow {
  return {
    id: row.id,
    name: row.name,
    sheetSize: { width: units(row.width), height: units(row.height) },
    createdAt: row.created_at,
    revision: row.revision,
  };
}
