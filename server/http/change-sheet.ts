import type { SheetPatch } from '../contract/pads.ts';
import { expected } from '../refusals/refusal.ts';
import type { Records } from '../store/records.ts';
import type { Face, SheetRow } from '../store/rows.ts';
import { found } from './found.ts';

const FACES = ['front', 'back'] as const;

/**
 * Changes a sheet by hand. A side moved here leaves its old place, and the side that it pushes out takes
 * that place: no side is ever in two places or in none. Sheets without any side go.
 */
export async function changeSheet(
  records: Records,
  id: string,
  change: SheetPatch,
  newId: () => string,
): Promise<SheetRow> {
  const before = found(await records.sheets.at(id), 'sheet', id);
  await checkSides(records, before, change);
  const sheets = new Map((await records.sheets.ofPad(before.pad)).map((row) => [row.id, row]));
  const changed = new Set([id]);
  for (const face of FACES) {
    const side = change[face];
    if (side === undefined || sheets.get(id)![face] === side) continue;
    for (const touched of move(sheets, id, face, side, newId)) changed.add(touched);
  }
  const { label, copies } = change;
  sheets.set(id, {
    ...sheets.get(id)!,
    ...(label === undefined ? {} : { label }),
    ...(copies === undefined ? {} : { copies }),
  });
  await keep(records, sheets, changed, before);
  await records.pads.touch(before.pad);
  return found(await records.sheets.at(id), 'sheet', id);
}

/** Puts a side (or none) into a place and the one that was there into the place that came free. */
function move(
  sheets: Map<string, SheetRow>,
  id: string,
  face: Face,
  side: string | null,
  newId: () => string,
): string[] {
  const sheet = sheets.get(id)!;
  const pushedOut = sheet[face];
  const from = side === null ? null : placeOf(sheets, side);
  sheets.set(id, { ...sheet, [face]: side });
  if (from !== null) {
    const left = sheets.get(from.sheet)!;
    sheets.set(from.sheet, { ...left, [from.face]: pushedOut });
    return [from.sheet];
  }
  if (pushedOut === null) return [];
  const alone = newId();
  const label = `${sheet.label} ${face}`.slice(0, 60);
  const lone = { ...sheet, id: alone, label, front: null, back: null, copies: 1, revision: 0 };
  sheets.set(alone, { ...lone, [face]: pushedOut });
  return [alone];
}

function placeOf(
  sheets: ReadonlyMap<string, SheetRow>,
  side: string,
): { sheet: string; face: Face } | null {
  for (const sheet of sheets.values())
    for (const face of FACES) if (sheet[face] === side) return { sheet: sheet.id, face };
  return null;
}

async function keep(
  records: Records,
  sheets: ReadonlyMap<string, SheetRow>,
  changed: ReadonlySet<string>,
  before: SheetRow,
): Promise<void> {
  for (const id of changed) {
    const sheet = sheets.get(id)!;
    const empty = sheet.front === null && sheet.back === null;
    if (empty && id === before.id)
      throw expected(
        'a sheet with at least one side',
        'sheet',
        { front: null, back: null },
        'Leave it its front or its back; to remove both, delete their photos.',
        'does-not-fit',
      );
    if (empty) await records.sheets.remove(id);
    else if (sheet.revision === 0) await records.sheets.add({ ...sheet, revision: 1 });
    else await records.sheets.put(sheet);
  }
}

async function checkSides(records: Records, sheet: SheetRow, change: SheetPatch): Promise<void> {
  for (const face of FACES) {
    const id = change[face];
    if (id === undefined || id === null) continue;
    const side = found(await records.sides.at(id), 'side', id, face);
    if (side.pad !== sheet.pad)
      throw expected(
        'a side of the same pad',
        face,
        id,
        'Choose a side of this pad.',
        'does-not-fit',
      );
  }
  if (change.front !== undefined && change.front !== null && change.front === change.back)
    throw expected(
      'two different sides',
      'back',
      change.back,
      'A sheet cannot show the same side twice; choose another.',
      'clash',
    );
}
