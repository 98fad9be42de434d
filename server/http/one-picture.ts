import { labDistance } from '../colour/difference.ts';
import { contains } from '../geometry/polygon.ts';
import { middleOf } from '../photo/find-sheets.ts';
import type { ChipsSeen } from '../photo/picture.ts';
import type { Records } from '../store/records.ts';
import type { PhotoRow } from '../store/rows.ts';

interface FromPhoto {
  readonly photo: string | null;
}

/** The photos from which these were read, by id. */
export async function photosOf(
  { photos }: Records,
  rows: readonly FromPhoto[],
): Promise<ReadonlyMap<string, PhotoRow>> {
  const ids = new Set(rows.flatMap(({ photo }) => photo ?? []));
  const found = await Promise.all([...ids].map((id) => photos.at(id)));
  return new Map(found.filter((photo) => photo !== null).map((photo) => [photo.id, photo]));
}

/** Whites whose middles lie closer than this part of the picture's width are one white card. */
const SAME_PLACE = 0.01;

/**
 * One name for photos that are one picture, read against one white and tied, if at all, by the same scraps. A picture of papers and supplies
 * together is sent once for each, so pictures are told by what is in them and not by their ids.
 */
export function picturesAsOne(photos: ReadonlyMap<string, PhotoRow>): (photo: string) => string {
  const names = new Map<string, string>();
  for (const photo of photos.values()) {
    const first = [...names.keys()].find((id) => isOnePicture(photos.get(id)!, photo));
    names.set(photo.id, first === undefined ? photo.id : names.get(first)!);
  }
  return (photo) => names.get(photo) ?? photo;
}

/** Tied to another photo, its colours are no longer as this picture shows them, but as those scraps say that are in both. */
function scrapsOf({ chips }: PhotoRow): ChipsSeen['scraps'] {
  return chips?.tie === 'tied' ? chips.scraps : [];
}

/** The same scraps in the same places, wanted to look the same. */
function isTiedAlike(p: PhotoRow, q: PhotoRow): boolean {
  const [a, b] = [scrapsOf(p), scrapsOf(q)];
  const isIn = (scraps: typeof a, { corners, lab }: (typeof a)[number]): boolean =>
    scraps.some(
      (one) => labDistance(one.lab, lab) === 0 && contains(one.corners, middleOf(corners)),
    );
  return a.length === b.length && a.every((scrap) => isIn(b, scrap));
}

function isOnePicture(p: PhotoRow, q: PhotoRow): boolean {
  if (q.hash !== p.hash || !isTiedAlike(p, q)) return false;
  const [a, b] = [p.white.corners, q.white.corners];
  if (a === null || b === null) return a === b;
  const [m, n] = [middleOf(a), middleOf(b)];
  return Math.hypot(m.x - n.x, m.y - n.y) < SAME_PLACE * p.width;
}
