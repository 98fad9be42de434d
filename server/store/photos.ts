import type { Kysely } from 'kysely';
import { docOf } from './doc.ts';
import { isOwn, isSeenPhoto, ownerNow } from './asker.ts';
import type { Whose } from './asker.ts';
import type { Face, PhotoRow } from './rows.ts';
import type { Tables } from './tables.ts';
import { nextTurn } from './turn.ts';

export interface Photos {
  at(id: string): Promise<PhotoRow | null>;
  ofPad(pad: string): Promise<PhotoRow[]>;
  /** Those of supplies, which are of no pad. */
  ofSupplies(): Promise<PhotoRow[]>;
  /** The photo of these very bytes in this pad, face and arrangement. */
  same(pad: string, face: Face, arrangement: string, hash: string): Promise<PhotoRow | null>;
  add(photo: PhotoRow): Promise<void>;
  /** Replaces what was read in it. */
  put(photo: PhotoRow): Promise<void>;
  remove(id: string): Promise<void>;
}

type Doc = Pick<PhotoRow, 'width' | 'height' | 'white' | 'chips' | 'tiedTo' | 'aside' | 'notes'>;

export function photosIn(db: Kysely<Tables>, whose: Whose): Photos {
  return {
    at: async (id) => {
      const row = await db
        .selectFrom('photos')
        .selectAll()
        .where('id', '=', id)
        .where(isSeenPhoto(whose))
        .executeTakeFirst();
      return row === undefined ? null : read(row);
    },
    ofPad: async (pad) =>
      (
        await db
          .selectFrom('photos')
          .selectAll()
          .where('pad', '=', pad)
          .where(isSeenPhoto(whose))
          .orderBy('turn')
          .execute()
      ).map(read),
    ofSupplies: async () =>
      (
        await db
          .selectFrom('photos')
          .selectAll()
          .where('pad', 'is', null)
          .where(isOwn(whose))
          .orderBy('turn')
          .execute()
      ).map(read),
    same: async (pad, face, arrangement, hash) => {
      const row = await db
        .selectFrom('photos')
        .selectAll()
        .where('pad', '=', pad)
        .where('face', '=', face)
        .where('arrangement', '=', arrangement)
        .where('hash', '=', hash)
        .where(isSeenPhoto(whose))
        .executeTakeFirst();
      return row === undefined ? null : read(row);
    },
    add: async (photo) => {
      await db
        .insertInto('photos')
        .values({ ...write(photo), turn: await nextTurn(db, 'photos'), owner: ownerNow(whose) })
        .execute();
    },
    put: async (photo) => {
      await db
        .updateTable('photos')
        .set({ ...write(photo), revision: photo.revision + 1 })
        .where('id', '=', photo.id)
        .execute();
    },
    remove: async (id) => {
      await db.deleteFrom('uploads').where('photo', '=', id).execute();
      await db.deleteFrom('photos').where('id', '=', id).execute();
    },
  };
}

function read(row: Tables['photos']): PhotoRow {
  const { width, height, white, chips, tiedTo, aside, notes } = JSON.parse(row.doc) as Doc;
  const { id, pad, face, arrangement, hash, picture, revision } = row;
  return {
    id,
    pad,
    face,
    arrangement,
    hash,
    picture,
    width,
    height,
    white,
    ...(chips === undefined ? {} : { chips }),
    ...(tiedTo === undefined ? {} : { tiedTo }),
    ...(aside === undefined ? {} : { aside }),
    notes,
    createdAt: row.created_at,
    revision,
  };
}

function write(photo: PhotoRow): Omit<Tables['photos'], 'turn' | 'owner'> {
  const { id, pad, face, arrangement, hash, picture, createdAt, revision } = photo;
  const { width, height, white, chips, tiedTo, aside, notes } = photo;
  const doc: Doc = {
    width,
    height,
    white,
    notes,
    ...(chips === undefined ? {} : { chips }),
    ...(tiedTo === undefined ? {} : { tiedTo }),
    ...(aside === undefined ? {} : { aside }),
  };
  return {
    id,
    pad,
    face,
    arrangement,
    hash,
    picture,
    doc: docOf(doc),
    created_at: createdAt,
    revision,
  };
}
