import type { Kysely } from 'kysely';
import { docOf } from './doc.ts';
import { isOwn, ownerNow } from './asker.ts';
import type { Whose } from './asker.ts';
import type { SupplyRow } from './rows.ts';
import type { Tables } from './tables.ts';
import { nextTurn } from './turn.ts';

export interface Supplies {
  all(): Promise<SupplyRow[]>;
  at(id: string): Promise<SupplyRow | null>;
  add(supply: SupplyRow): Promise<void>;
  put(supply: SupplyRow): Promise<void>;
  remove(id: string): Promise<void>;
}

type Doc = Pick<SupplyRow, 'lab' | 'uncertainty' | 'sheets' | 'corners'> & {
  readonly demo?: true;
  readonly glossy?: true;
  readonly pad?: string;
};

export function suppliesIn(db: Kysely<Tables>, whose: Whose): Supplies {
  return {
    all: async () =>
      (
        await db.selectFrom('supplies').selectAll().where(isOwn(whose)).orderBy('turn').execute()
      ).map(read),
    at: async (id) => {
      const row = await db
        .selectFrom('supplies')
        .selectAll()
        .where('id', '=', id)
        .where(isOwn(whose))
        .executeTakeFirst();
      return row === undefined ? null : read(row);
    },
    add: async (supply) => {
      await db
        .insertInto('supplies')
        .values({ ...write(supply), turn: await nextTurn(db, 'supplies'), owner: ownerNow(whose) })
        .execute();
    },
    put: async (supply) => {
      await db
        .updateTable('supplies')
        .set({ ...write(supply), revision: supply.revision + 1 })
        .where('id', '=', supply.id)
        .execute();
    },
    remove: async (id) => {
      await db.deleteFrom('supplies').where('id', '=', id).execute();
    },
  };
}

function read(row: Tables['supplies']): SupplyRow {
  const { id, kind, name, photo, revision } = row;
  const doc = JSON.parse(row.doc) as Doc;
  return {
    id,
    kind,
    name,
    photo,
    revision,
    createdAt: row.created_at,
    ...doc,
    demo: doc.demo ?? false,
  };
}

function write(supply: SupplyRow): Omit<Tables['supplies'], 'turn' | 'owner'> {
  const { id, kind, name, photo, createdAt, revision } = supply;
  const { lab, uncertainty, sheets, corners, demo, glossy, pad } = supply;
  const doc: Doc = {
    lab,
    uncertainty,
    sheets,
    corners,
    ...(demo ? { demo } : {}),
    ...(glossy === true ? { glossy } : {}),
    ...(pad === undefined ? {} : { pad }),
  };
  return { id, kind, name, photo, doc: docOf(doc), created_at: createdAt, revision };
}
