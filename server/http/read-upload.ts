import type { PhotoOfSides } from '../from-photo-to-guide.ts';
import type { Tap } from '../photo/picture.ts';
import { Refusal } from '../refusals/refusal.ts';
import type { SideRow } from '../store/rows.ts';
import type { UploadRow } from '../store/uploads.ts';
import { chipColoursOf } from './chip-colours.ts';
import type { Edges } from './edges.ts';
import { found } from './found.ts';
import { placeSides } from './place-sides.ts';
import { problemOf } from './problem-of.ts';
import type { TakenPhoto } from './take-photo.ts';

/** A photo that could not be read so often, for no fault of its own, is given up. */
const MOST_TRIES = 5;
/** After each it rests so much longer, in milliseconds: what kept it from being read may pass. */
const REST = 15_000;

/**
 * Reads a photo that waits and keeps it: first the files, synced under the name of their content, then the rows in
 * one transaction, in which it also ceases to wait. What this gives is safe on the disk.
 *
 * Throws      what kept it from being read. A sender who has her answer already finds the problem with the
 *             upload; for her it is tried again when it was no fault of the photo.
 */
export async function readUpload(edges: Edges, upload: UploadRow): Promise<TakenPhoto> {
  const { files } = edges.store;
  const kept = await readNow(edges, upload).catch(async (fault: unknown) => {
    await giveUp(edges, upload, fault);
    throw fault;
  });
  // The photo is kept: a file that stays behind is no reason to say otherwise.
  await files.letGo(upload.file).catch(() => undefined);
  edges.changes.tell(upload.pad);
  return kept;
}

async function readNow(edges: Edges, upload: UploadRow): Promise<TakenPhoto> {
  const { store, desk } = edges;
  const { pad: padId, face, arrangement } = upload;
  const received = await store.files.held(upload.file, upload.hash);
  const pad = found(await store.read.pads.at(padId), 'pad', padId);
  const reading = await desk.readSides({
    file: received.path,
    sheetSize: pad.sheetSize,
    tap: JSON.parse(upload.told) as Pick<Tap, 'white' | 'chips'>,
    chipColours: chipColoursOf(await store.read.photos.ofPad(padId)),
  });
  if (reading.sides.length === 0) throw noSheets(reading.notes);
  const picture = await store.files.keepBytes('pictures', reading.picture);
  const swatches = await keepSwatches(edges, reading);
  const hash = await store.files.shelve('photos', received);
  return store.write(async (records) => {
    found(await records.pads.at(padId), 'pad', padId);
    const twin = await records.photos.same(padId, face, arrangement, hash);
    if (twin !== null) {
      await noteRead(twin.id);
      return { photo: twin, sides: await records.sides.ofPhoto(twin.id) };
    }
    // Forgotten while it was read: then it does not appear.
    found(await records.uploads.at(upload.id), 'upload', upload.id);
    const photo = {
      id: edges.newId(),
      pad: padId,
      face,
      arrangement,
      hash,
      picture,
      width: reading.width,
      height: reading.height,
      white: reading.white,
      chips: reading.chips,
      notes: reading.notes,
      createdAt: edges.now(),
      revision: 1,
    };
    await records.photos.add(photo);
    const sides = reading.sides.map((side, place): SideRow => {
      const { corners, palette, pattern, confidence, notes } = side;
      const read = { corners, palette, pattern, confidence, notes };
      const swatch = swatches[place]!;
      return {
        id: edges.newId(),
        pad: padId,
        photo: photo.id,
        place,
        swatch,
        revision: 1,
        ...read,
      };
    });
    for (const side of sides) await records.sides.add(side);
    await placeSides(records, photo, sides, edges.newId);
    await records.pads.touch(padId);
    await noteRead(photo.id);
    return { photo, sides };

    async function noteRead(id: string): Promise<void> {
      if (upload.acknowledged) await records.uploads.settle(upload.id, { photo: id });
      else await records.uploads.remove(upload.id);
    }
  });
}

async function giveUp({ store, now }: Edges, upload: UploadRow, fault: unknown): Promise<void> {
  const { id, file, acknowledged, tries } = upload;
  const ofThePhoto = fault instanceof Refusal && fault.kind !== 'busy';
  const again = new Date(Date.parse(now()) + REST * tries).toISOString();
  try {
    if (acknowledged && !ofThePhoto && tries < MOST_TRIES) {
      await store.waiting.putBack(id, again);
      return;
    }
    await store.write(({ uploads }) =>
      acknowledged
        ? uploads.settle(id, { problem: JSON.stringify(problemOf(fault, undefined)) })
        : uploads.remove(id),
    );
    await store.files.letGo(file);
  } catch {
    // What keeps it from being noted is told by the first fault; it is no longer renewed, so it is tried again
    // when its lease has run out.
    await store.waiting.putBack(id, again).catch(() => undefined);
  }
}

function keepSwatches(
  edges: Edges,
  reading: Pick<PhotoOfSides, 'sides'>,
): Promise<readonly string[]> {
  return Promise.all(
    reading.sides.map(({ swatch }) => edges.store.files.keepBytes('swatches', swatch)),
  );
}

function noSheets(notes: readonly string[]): Refusal {
  return new Refusal({
    kind: 'nothing-found',
    field: 'photo',
    received: null,
    message: ['Expected sheets of paper in the photo but found none', ...notes].join('. '),
    mend: 'Lay the sheets on a plain table of another colour, a finger’s width apart, and take the photo from above.',
  });
}
