import { labDistance } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { PhotoOfSupplies } from '../from-photo-to-guide.ts';
import { contains } from '../geometry/polygon.ts';
import type { Quad } from '../geometry/points.ts';
import { NO_CHIPS } from '../photo/chips.ts';
import type { Spot } from '../photo/picture.ts';
import { middleOf } from '../photo/find-sheets.ts';
import { Refusal } from '../refusals/refusal.ts';
import type { Records } from '../store/records.ts';
import type { PhotoRow, SupplyRow } from '../store/rows.ts';
import { tappedWhite } from './as-before.ts';
import { isCalledByColour, namesByColour } from './called-by-colour.ts';
import type { Edges } from './edges.ts';
import { found } from './found.ts';

/** The scraps of a pad that she touched in a photo of supplies. */
export interface Tie {
  readonly pad: string;
  readonly spots: readonly Spot[];
  /** What the scraps look like in the pad's photos. */
  readonly colours: readonly Lab[];
}

export interface SuppliesReadAgain {
  readonly supplies: readonly SupplyRow[];
  /** What she touched that stays in her list. */
  readonly notes: readonly string[];
}

/**
 * Read with the tie, a scrap comes so near to what it is in the pad's photos, in CIELAB units: on drawn photos in
 * two rooms scraps came to 1.5 at most, cardstock that was touched and taken for a scrap to 5.9 at least.
 */
const ALIKE = 4;

/**
 * Reads a photo of supplies again, tied by scraps or by none. A supply that is told to be one of the scraps is laid
 * aside with the photo, and comes back with its name and count when it is told to be none. When another of its
 * supplies is touched meanwhile, or one is taken away, all is read once more.
 */
export async function readSuppliesAgain(
  edges: Edges,
  photo: PhotoRow,
  tie: Tie | null,
  hold: (revision: number) => void,
): Promise<SuppliesReadAgain> {
  const { store, desk } = edges;
  hold(photo.revision);
  const before = await suppliesIn(store.read, photo);
  const all = [...before, ...(photo.aside ?? [])];
  const file = await store.files.readable('photos', photo.hash);
  const readBy = (spots: readonly Spot[]): Promise<PhotoOfSupplies> =>
    desk.readSupplies({
      file,
      tap: {
        ...tappedWhite(photo),
        ...(tie === null ? {} : { chips: spots }),
        corners: all.map(({ corners }) => corners!),
      },
      chipColours: tie?.colours ?? [],
    });
  const touched = (tie?.spots ?? []).map((spot) => all.filter((one) => lies(spot, one)));
  let reading = await readBy(tie?.spots ?? []);
  const slips = all.filter((one) => touched.flat().includes(one) && !isScrap(one, all, reading));
  const spots = (tie?.spots ?? []).filter(
    (_, at) => !touched[at]!.some((one) => slips.includes(one)),
  );
  // A slip onto what is no scrap must not bend the colours of all.
  if (slips.some((one) => scrapOn(one, reading) !== undefined)) reading = await readBy(spots);
  if (tie !== null && reading.chips.tie !== 'tied') throw notTied(reading, slips);
  const aside = all.filter((one) => touched.flat().includes(one) && !slips.includes(one));
  const kept = await store.write(async (records) => {
    const now = found(await records.photos.at(photo.id), 'photo', photo.id);
    hold(now.revision);
    const there = await suppliesIn(records, photo);
    if (now.revision !== photo.revision || !areSame(there, before)) return null;
    await records.photos.put(tiedSo(now, tie, reading, aside));
    const rows = renamed(
      all.filter((one) => !aside.includes(one)),
      (one) => ({
        ...(there.find(({ id }) => id === one.id) ?? one),
        ...reading.supplies[all.indexOf(one)]!,
      }),
    );
    for (const row of rows)
      if (there.some(({ id }) => id === row.id)) await records.supplies.put(row);
      else await records.supplies.add({ ...row, revision: row.revision + 1 });
    for (const { id } of aside) await records.supplies.remove(id);
    return suppliesIn(records, photo);
  });
  if (kept !== null) return { supplies: kept, notes: slips.map(({ name }) => stays(name)) };
  const again = found(await store.read.photos.at(photo.id), 'photo', photo.id);
  return readSuppliesAgain(edges, again, tie, hold);
}

/** The supplies that were found or touched in a photo. */
export async function suppliesIn({ supplies }: Records, { id }: PhotoRow): Promise<SupplyRow[]> {
  return (await supplies.all()).filter(({ photo, corners }) => photo === id && corners !== null);
}

function areSame(p: readonly SupplyRow[], q: readonly SupplyRow[]): boolean {
  return p.length === q.length && p.every(({ id }, at) => id === q[at]!.id);
}

function tiedSo(
  photo: PhotoRow,
  tie: Tie | null,
  { white, chips, notes }: PhotoOfSupplies,
  aside: readonly SupplyRow[],
): PhotoRow {
  const { id, pad, face, arrangement, hash, picture, width, height, createdAt, revision } = photo;
  const own = { id, pad, face, arrangement, hash, picture, width, height, createdAt, revision };
  if (tie === null) return { ...own, white, chips: NO_CHIPS, notes };
  return { ...own, white, chips, tiedTo: tie.pad, aside, notes };
}

/** What was called by its colour is called by the colour that it has now; a name of her own stays. */
function renamed(
  before: readonly SupplyRow[],
  again: (supply: SupplyRow) => SupplyRow,
): SupplyRow[] {
  const rows = before.map(again);
  const called = rows.filter(({ name }, at) => isCalledByColour(name, before[at]!.lab));
  const names = namesByColour(called.map(({ lab }) => lab));
  return rows.map((row) =>
    called.includes(row) ? { ...row, name: names[called.indexOf(row)]! } : row,
  );
}

function lies(spot: Spot, { corners }: SupplyRow): boolean {
  return contains(corners!, 'x' in spot ? spot : middleOf(spot));
}

/** The scrap of the pad for which something on a supply was taken. */
function scrapOn(
  { corners }: SupplyRow,
  { chips }: PhotoOfSupplies,
): { readonly corners: Quad<'photo'>; readonly lab: Lab } | undefined {
  return chips.scraps.find((scrap) => contains(corners!, middleOf(scrap.corners)));
}

function isScrap(supply: SupplyRow, all: readonly SupplyRow[], reading: PhotoOfSupplies): boolean {
  const scrap = scrapOn(supply, reading);
  return (
    scrap !== undefined &&
    labDistance(scrap.lab, reading.supplies[all.indexOf(supply)]!.lab) < ALIKE
  );
}

function stays(name: string): string {
  return `You touched ${name}, which does not look like a scrap of the pad’s photos: it stays in your list, and nothing is told by it.`;
}

function notTied({ notes }: PhotoOfSupplies, slips: readonly SupplyRow[]): Refusal {
  const off = slips.map(({ name }) => name).join(', ');
  return new Refusal({
    kind: 'does-not-fit',
    field: 'chips',
    received: off === '' ? (notes.at(-1) ?? null) : off,
    message:
      'Expected three scraps or more of the pad’s photos, two of them greys that differ well in lightness, but those touched do not look like them',
    mend: 'Touch the middle of each scrap, away from its edge: the same scraps that lie in the pad’s photos.',
  });
}
