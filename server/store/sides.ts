import type { Kysely } from 'kysely';
import { docOf } from './doc.ts';
import { isOfSeenPad } from './asker.ts';
import type { Whose } from './asker.ts';
import type { SideRow } from './rows.ts';
import type { Tables } from './tables.ts';

export interface Sides {
  at(id: string): Promise<SideRow | null>;
  ofPad(pad: string): Promise<SideRow[]>;
  ofPhoto(photo: string): Promise<SideRow[]>;
  add(side: SideRow): Promise<void>;
  /** Replaces what was read of it. */
  put(side: SideRow): Promise<void>;
  removeOfPhoto(photo: string): Promise<void>;
}

type Doc = Pick<SideRow, 'corners' | 'palette' | 'pattern' | 'confidence' | 'notes'>;

export function sidesIn(db: Kysely<Tables>, whose: Whose): Sides {
  const of = async (column: 'pad' | 'photo', id: string): Promise<SideRow[]> =>
    (
      await db
        .selectFrom('sides')
        .selectAll()
        .where(column, '=', id)
        .where(isOfSeenPad(whose))
        .orderBy('place')
        .execute()
    ).map(read);
  return {
    at: async (id) => {
      const row = await db
        .selectFrom('sides')
        .selectAll()
        .where('id', '=', id)
        .where(isOfSeenPad(whose))
        .executeTakeFirst();
      return row === undefined ? null : read(row);
    },
    ofPad: (pad) => of('pad', pad),
    ofPhoto: (photo) => of('photo', photo),
    add: async (side) => {
      await db.insertInto('sides').values(write(side)).execute();
    },
    put: async (side) => {
      await db
        .updateTable('sides')
        .set({ ...write(side), revision: side.revision + 1 })
        .where('id', '=', side.id)
        .execute();
    },
    removeOfPhoto: async (photo) => {
      await db.deleteFrom('sides').where('photo', '=', photo).execute();
    },
  };
}

function read(row: Tables['sides']): SideRow {
  const { id, pad, photo, place, swatch, revision } = row;
  return { id, pad, photo, place, swatch, revision, ...(JSON.parse(row.doc) as Doc) };
}

function write(side: SideRow): Tables['sides'] {
  const { id, pad, photo, place, swatch, revision } = side;
  const { corners, palette, pattern, confidence, notes } = side;
  const doc: Doc = { corners, palette, pattern, confidence, notes };
  return { id, pad, photo, place, swatch, revision, doc: docOf(doc) };
}
