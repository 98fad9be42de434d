import type { Records } from '../store/records.ts';
import type { PhotoRow } from '../store/rows.ts';

/** Removes a photo with the sides read from it; sheets that lose both sides go. Plans made with it stay as they were. */
export async function removePhoto(records: Records, photo: PhotoRow): Promise<void> {
  const sides = new Set((await records.sides.ofPhoto(photo.id)).map(({ id }) => id));
  const stays = (side: string | null): string | null =>
    side === null || sides.has(side) ? null : side;
  for (const sheet of photo.pad === null ? [] : await records.sheets.ofPad(photo.pad)) {
    const [front, back] = [stays(sheet.front), stays(sheet.back)];
    if (front === sheet.front && back === sheet.back) continue;
    if (front === null && back === null) await records.sheets.remove(sheet.id);
    else await records.sheets.put({ ...sheet, front, back });
  }
  await records.sides.removeOfPhoto(photo.id);
  await records.photos.remove(photo.id);
  if (photo.pad !== null) await records.pads.touch(photo.pad);
}
