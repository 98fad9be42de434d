import { isDeepStrictEqual } from 'node:util';
import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { expected } from '../refusals/refusal.ts';
import type { Spot, Tap } from '../photo/picture.ts';
import { keepingUp } from '../pattern/told-up.ts';
import type { ReadSide } from '../from-photo-to-guide.ts';
import type { PhotoRow, SideRow } from '../store/rows.ts';
import type { Edges } from './edges.ts';
import { asBefore } from './as-before.ts';
import { found } from './found.ts';

/** Refuses a change that was meant for another revision than this one. */
type Hold = (revision: number) => void;

/**
 * Reads one side again with the corners that she has shown, and keeps what was read. Reading takes a while,
 * so the revision is held once before it and again in the transaction that keeps it.
 */
export async function readSideAgain(
  edges: Edges,
  side: SideRow,
  corners: Quad<'photo'>,
  hold: Hold,
): Promise<SideRow> {
  hold(side.revision);
  const photo = found(await edges.store.read.photos.at(side.photo), 'photo', side.photo);
  holdInPhoto(corners, photo, 'corners');
  const [read] = (await readWith(edges, photo, [corners], {})).sides;
  const again = await updated(edges, side, found(read ?? null, 'side', side.id));
  const kept = await edges.store.write(async (records) => {
    const there = found(await records.sides.at(side.id), 'side', side.id);
    hold(there.revision);
    await records.sides.put(standing(again, there));
    await records.pads.touch(side.pad);
    return found(await records.sides.at(side.id), 'side', side.id);
  });
  edges.changes.tell(side.pad);
  return kept;
}

/**
 * Reads all sides of a photo again with the white card or the scraps where she has shown them; their corners stay.
 * When she shows other corners of one meanwhile, all is read once more with those.
 */
export async function readPhotoAgain(
  edges: Edges,
  photo: PhotoRow,
  shown: Pick<Tap, 'white' | 'chips'>,
  hold: Hold,
): Promise<void> {
  hold(photo.revision);
  if (shown.white !== undefined) holdInPhoto(pointsOf(shown.white), photo, 'white');
  holdInPhoto((shown.chips ?? []).flatMap(pointsOf), photo, 'chips');
  const sides = await edges.store.read.sides.ofPhoto(photo.id);
  const reading = await readWith(
    edges,
    photo,
    sides.map(({ corners }) => corners),
    shown,
  );
  const again = await Promise.all(
    sides.map((side, at) => updated(edges, side, reading.sides[at] ?? side)),
  );
  const kept = await edges.store.write(async (records) => {
    const now = found(await records.photos.at(photo.id), 'photo', photo.id);
    hold(now.revision);
    const there = await records.sides.ofPhoto(photo.id);
    const asked = new Map(sides.map(({ id, corners }) => [id, corners]));
    if (!there.every(({ id, corners }) => isDeepStrictEqual(corners, asked.get(id)))) return false;
    await records.photos.put({
      ...now,
      white: reading.white,
      chips: reading.chips,
      notes: reading.notes,
    });
    for (const side of there)
      await records.sides.put(
        standing(
          again.find(({ id }) => id === side.id)!,
          side,
        ),
      );
    if (photo.pad !== null) await records.pads.touch(photo.pad);
    return true;
  });
  if (!kept) {
    await readPhotoAgain(edges, photo, shown, hold);
    return;
  }
  if (photo.pad !== null) edges.changes.tell(photo.pad);
}

/** A sheet may run a little over the rim of the photo; what lies further out was never seen. */
const OVER_RIM = 0.05;

export function holdInPhoto(
  corners: readonly PhotoPoint[],
  { width, height }: Pick<PhotoRow, 'width' | 'height'>,
  field: string,
): void {
  const inside = (at: number, whole: number): boolean =>
    at >= -OVER_RIM * whole && at <= (1 + OVER_RIM) * whole;
  if (corners.every(({ x, y }) => inside(x, width) && inside(y, height))) return;
  throw expected(
    `corners within the photo, which is ${width} x ${height} pixels,`,
    field,
    corners.map(({ x, y }) => [x, y]),
    'Drag the four corners onto what they belong to in the photo.',
    'does-not-fit',
  );
}

export function pointsOf(spot: Spot): readonly PhotoPoint[] {
  return 'x' in spot ? [spot] : spot;
}

/** What she shows now stands before what she showed, or was found, before. */
async function readWith(
  edges: Edges,
  photo: PhotoRow,
  corners: readonly Quad<'photo'>[],
  shown: Pick<Tap, 'white' | 'chips'>,
): ReturnType<Edges['desk']['readSides']> {
  const { store, desk } = edges;
  const pad = found(await store.read.pads.at(photo.pad ?? ''), 'pad', photo.pad ?? '');
  // The picture for the screen does not change; the file is asked for first so that its loss is told plainly.
  const file = await store.files.readable('photos', photo.hash);
  const others = (await store.read.photos.ofPad(pad.id)).filter(({ id }) => id !== photo.id);
  const { tap, chipColours } = asBefore(photo, others);
  return desk.readSides({
    file,
    sheetSize: pad.sheetSize,
    tap: { ...tap, ...shown, corners },
    chipColours,
  });
}

/** What was read of a side, over the row that stands now: what she said while it was read is not lost. */
function standing(again: SideRow, there: SideRow): SideRow {
  const pattern = keepingUp(again.pattern, there.pattern);
  return { ...again, pattern, revision: there.revision };
}

async function updated(edges: Edges, side: SideRow, read: ReadSide | SideRow): Promise<SideRow> {
  const { corners, palette, pattern, confidence, notes, swatch } = read;
  const hash =
    typeof swatch === 'string' ? swatch : await edges.store.files.keepBytes('swatches', swatch);
  return { ...side, corners, palette, pattern, confidence, notes, swatch: hash };
}
