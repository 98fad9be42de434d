import { Refusal } from '../refusals/refusal.ts';
import type { PhotoOfSides } from '../from-photo-to-guide.ts';
import type { Tap } from '../photo/picture.ts';
import type { Received } from '../store/files.ts';
import type { Face, PhotoRow, SideRow } from '../store/rows.ts';
import type { Edges } from './edges.ts';
import { chipColoursOf } from './chip-colours.ts';
import { found } from './found.ts';
import { placeSides } from './place-sides.ts';

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
 * Reads a photo of sheets and keeps it: first the files, synced under the name of their content, then the
 * rows in one transaction. What this gives is safe on the disk. The same bytes in the same place
 * again give the photo that is there.
 */
export async function takePhoto(edges: Edges, taken: PhotoOfPad): Promise<TakenPhoto> {
  const { store, desk } = edges;
  const { pad: padId, face, arrangement, received, tap } = taken;
  try {
    const pad = found(await store.read.pads.at(padId), 'pad', padId);
    const known = await alreadyTaken(edges, taken);
    if (known !== null) return known;
    const chipColours = chipColoursOf(await store.read.photos.ofPad(padId));
    const reading = await desk.readSides({
      file: received.path,
      sheetSize: pad.sheetSize,
      tap,
      chipColours,
    });
    if (reading.sides.length === 0) throw noSheets(reading.notes);
    const picture = await store.files.keepBytes('pictures', reading.picture);
    const swatches = await keepSwatches(edges, reading);
    const hash = await store.files.keep('photos', received);
    const kept = await store.write(async (records) => {
      found(await records.pads.at(padId), 'pad', padId);
      const twin = await records.photos.same(padId, face, arrangement, hash);
      if (twin !== null) return { photo: twin, sides: await records.sides.ofPhoto(twin.id) };
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
      return { photo, sides };
    });
    edges.changes.tell(padId);
    return kept;
  } finally {
    await store.files.drop(received);
  }
}

async function alreadyTaken(edges: Edges, taken: PhotoOfPad): Promise<TakenPhoto | null> {
  const { read } = edges.store;
  const { pad, face, arrangement, received } = taken;
  const photo = await read.photos.same(pad, face, arrangement, received.hash);
  return photo === null ? null : { photo, sides: await read.sides.ofPhoto(photo.id) };
}

export function keepSwatches(
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
