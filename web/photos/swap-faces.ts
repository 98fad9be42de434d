import type { Pad, Sheet } from '../../server/contract/pads.ts';
import { service } from '../wire/service.ts';

/** The sheets that have a side on a photo of that arrangement. */
export function sheetsOn(pad: Pad, arrangement: string): Sheet[] {
  const photos = new Set(
    pad.photos.filter((photo) => photo.arrangement === arrangement).map(({ id }) => id),
  );
  return pad.sheets.filter(({ front, back }) =>
    [front, back].some((side) => side !== null && photos.has(side.photo)),
  );
}

/** Turns sheets over: what was the front becomes the back. One after the other, for each may move a side of the next. */
export async function swapFaces(sheets: readonly Sheet[]): Promise<void> {
  for (const { id, front, back } of sheets) {
    // A side put into its new place leaves the old one, and what lay there takes it: one move swaps both.
    if (front !== null) await service.changeSheet(id, { back: front.id });
    else if (back !== null) await service.changeSheet(id, { front: back.id });
  }
}
