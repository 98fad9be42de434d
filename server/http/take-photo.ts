import { Refusal } from '../refusals/refusal.ts';
import type { Tap } from '../photo/picture.ts';
import type { Received } from '../store/files.ts';
import type { Face, PhotoRow, SideRow } from '../store/rows.ts';
import type { UploadRow } from '../store/uploads.ts';
import type { Edges } from './edges.ts';
import { found } from './found.ts';
import { readUpload } from './read-upload.ts';

/** A photo that has come in, and what she said of it. */
export interface PhotoOfPad {
  readonly pad: string;
  readonly face: Face;
  readonly arrangement: string;
  readonly received: Received;
  /** Where she showed the white card and the scraps. */
  readonly tap: Pick<Tap, 'white' | 'chips'>;
}

export interface TakenPhoto {
  readonly photo: PhotoRow;
  readonly sides: readonly SideRow[];
}

/**
 * Takes a photo in and reads it. It is made safe before it is read, so when this process ends meanwhile another,
 * or this one started again, reads it all the same. The same bytes in the same place again give the photo that is there.
 */
export async function takePhoto(edges: Edges, taken: PhotoOfPad): Promise<TakenPhoto> {
  try {
    const known = await alreadyTaken(edges, taken);
    return known ?? (await readUpload(edges, await holdPhoto(edges, taken, false)));
  } finally {
    await edges.store.files.drop(taken.received);
  }
}

/** Takes a photo in to be read later, by whichever process comes to it; it is safe when this is kept. */
export async function takePhotoForLater(edges: Edges, taken: PhotoOfPad): Promise<UploadRow> {
  try {
    const { count, bytes } = await edges.store.read.uploads.waiting();
    if (count >= MOST_WAITING || bytes + taken.received.size > MOST_BYTES)
      throw tooManyWaiting(count, bytes);
    return await holdPhoto(edges, taken, true);
  } finally {
    await edges.store.files.drop(taken.received);
  }
}

/** Of one person. They lie on the disk, not in memory; a photo is read in about a second. */
const MOST_WAITING = 500;
/** 2 GB: as many photos of a telephone. */
const MOST_BYTES = 2e9;

/** First the file, synced, then its row. */
async function holdPhoto(
  edges: Edges,
  { pad, face, arrangement, received, tap }: PhotoOfPad,
  acknowledged: boolean,
): Promise<UploadRow> {
  const { store, now, newId } = edges;
  const file = await store.files.hold(received);
  const createdAt = now();
  const [id, told] = [newId(), JSON.stringify(tap)];
  const { hash, size } = received;
  const where = { pad, face, arrangement };
  const came = { photo: null, problem: null };
  const row = { id, ...where, hash, file, size, told, createdAt, acknowledged, ...came };
  try {
    return await store.write(async ({ pads, uploads }) => {
      found(await pads.at(pad), 'pad', pad);
      await uploads.add(row, acknowledged ? null : store.waiting.lease(createdAt));
      return found(await uploads.at(id), 'upload', id);
    });
  } catch (fault) {
    await store.files.letGo(file).catch(() => undefined);
    throw fault;
  }
}

async function alreadyTaken(edges: Edges, taken: PhotoOfPad): Promise<TakenPhoto | null> {
  const { read } = edges.store;
  const { pad, face, arrangement, received } = taken;
  const photo = await read.photos.same(pad, face, arrangement, received.hash);
  return photo === null ? null : { photo, sides: await read.sides.ofPhoto(photo.id) };
}

function tooManyWaiting(count: number, bytes: number): Refusal {
  return new Refusal({
    kind: 'busy',
    field: 'photo',
    received: null,
    message:
      count >= MOST_WAITING
        ? `${count} photos wait to be read already`
        : `${count} photos, ${(bytes / 1e9).toFixed(1)} GB together, wait to be read already, and ${MOST_BYTES / 1e9} GB may`,
    mend: 'Wait a while, then send it again.',
  });
}
