import { pairByPlace } from '../pad/pair-by-place.ts';
import type { Records } from '../store/records.ts';
import type { Face, PhotoRow, SheetRow, SideRow } from '../store/rows.ts';

/**
 * Gives the sides of a new photo their places in the pad's sheets: beside the sides of the photo of the
 * same sheets turned over, if it is there already, else on new sheets in reading order.
 *
 * The first photo of fronts goes with the first photo of backs of its arrangement, the second with the
 * second. Sheets that she has changed by hand stay as they are; only empty places are filled.
 */
export async function placeSides(
  records: Records,
  photo: PhotoRow & { readonly pad: string; readonly face: Face },
  sides: readonly SideRow[],
  newId: () => string,
): Promise<void> {
  const { pad, face } = photo;
  const sheets = await records.sheets.ofPad(pad);
  const other = await turnedOver(records, photo);
  const facing = other === null ? [] : await records.sides.ofPhoto(other.id);
  const pairs = face === 'front' ? pairByPlace(sides, facing) : pairByPlace(facing, sides);
  let place = Math.max(0, ...sheets.map((sheet) => sheet.place));
  let number = lastNumber(sheets);
  for (const pair of pairs) {
    const mine = pair[face];
    if (mine === null) continue;
    const partner = pair[face === 'front' ? 'back' : 'front'];
    const sheet = partner === null ? undefined : waitingSheet(sheets, face, partner);
    if (sheet !== undefined) await records.sheets.put({ ...sheet, [face]: mine });
    else
      await records.sheets.add({
        id: newId(),
        pad,
        label: `Sheet ${(number += 1)}`,
        copies: 1,
        front: face === 'front' ? mine : null,
        back: face === 'back' ? mine : null,
        place: (place += 1),
        revision: 1,
      });
  }
}

/** The sheet that shows the partner and still lacks this face. */
function waitingSheet(
  sheets: readonly SheetRow[],
  face: Face,
  partner: string,
): SheetRow | undefined {
  const facing = face === 'front' ? 'back' : 'front';
  return sheets.find((sheet) => sheet[facing] === partner && sheet[face] === null);
}

async function turnedOver(records: Records, photo: PhotoRow): Promise<PhotoRow | null> {
  const photos = (await records.photos.ofPad(photo.pad ?? '')).filter(
    ({ arrangement }) => arrangement === photo.arrangement,
  );
  const mine = photos.filter(({ face }) => face === photo.face);
  const others = photos.filter(({ face }) => face !== photo.face);
  return others[mine.findIndex(({ id }) => id === photo.id)] ?? null;
}

/** Labels go on counting from the highest number given, also when she has renamed some. */
function lastNumber(sheets: readonly SheetRow[]): number {
  const numbers = sheets.map(({ label }) => Number(/^Sheet (\d{1,6})$/.exec(label)?.[1] ?? 0));
  return Math.max(sheets.length, ...numbers);
}
