import { formatSize } from '../lengths/format-length.ts';
import type { Size } from '../lengths/length.ts';
import { Refusal } from '../refusals/refusal.ts';
import { cutSlot } from './cut-slot.ts';
import { leastEffort } from './effort.ts';
import { fewestOf, mayPairAcross } from './fewest-across.ts';
import { fewestSheets } from './fewest-sheets.ts';
import { fillSlots } from './fill-slots.ts';
import { workOn } from './lots.ts';
import type { Lot, Work } from './lots.ts';
import { Oracle } from './oracle.ts';
import type { Blank } from './pairs.ts';
import type { CuttingScheme, Piece, Slot } from './piece.ts';
import type { CutSettings } from './settings.ts';
import { spareSheets } from './spare-sheets.ts';

export type { CutSettings } from './settings.ts';

/**
 * Puts pieces onto as few sheets as can be found, so that each sheet comes apart by edge-to-edge cuts.
 *
 * Takes    the pieces of a batch, the size of a sheet and the settings. With `apart`, pieces of one
 *          card with the same `paper` share a sheet and with another `paper` never do. Two equal
 *          triangles that may come from one sheet are cut as one rectangle; with `apart` those of two
 *          cards only with `pairAcross`, and only where that spares a sheet.
 * Gives    the slots with their cuts, a proven lower bound, and whether it is reached. Sheets that
 *          are cut alike follow each other. The same input and seed give the same scheme.
 * Refuses  a piece larger than the sheet, and pieces that must but cannot share a sheet.
 * Good up to about a hundred pieces; a sheet of more than about twelve different pieces is packed by
 *          rules of thumb, and then fewer sheets may be possible: `proven` says false.
 */
export function cutScheme(
  pieces: readonly Piece[],
  sheet: Size,
  settings: CutSettings,
): CuttingScheme {
  const fewest = fewestOf(pieces, sheet, settings);
  const plain = schemeOf(pieces, sheet, { ...settings, pairAcross: false }, fewest);
  if (!mayPairAcross(settings) || plain.proven) return plain;
  const tied = schemeOf(pieces, sheet, settings, fewest);
  return tied.slots.length < plain.slots.length ? tied : plain;
}

function schemeOf(
  pieces: readonly Piece[],
  sheet: Size,
  settings: CutSettings,
  least: number | null,
): CuttingScheme {
  const work = workOn(pieces, sheet, settings);
  const oracle = new Oracle(work);
  work.lots.forEach((lot) => checkTogether(lot, oracle, sheet, settings));
  const fewest = least ?? fewestSheets(work, oracle);
  const filled = fillSlots(work, oracle);
  const spared = spareSheets(filled, fewest, work, oracle, settings);
  const slots = likeBesideLike(spared).map((lots, index) =>
    slotOf(`slot-${index + 1}`, lots, sheet, work, oracle, settings),
  );
  return { sheet, slots, fewestSheets: fewest, proven: slots.length === fewest };
}

/** The cuts of one slot, for lots that are known to fit: of all that are found, those that take the least effort. */
export function slotOf(
  id: string,
  lots: readonly Lot[],
  sheet: Size,
  work: Work,
  oracle: Oracle,
  settings: CutSettings,
): Slot {
  const mayTurn = (piece: Piece): boolean => !settings.keepUp && piece.keepUp !== true;
  const slots = oracle
    .plansOf(lots)
    .map((plan) => cutSlot(id, sheet, plan, takerOf(lots, work), mayTurn));
  return leastEffort(slots, settings.apart);
}

/** Hands out the rectangles of some lots, kind by kind, and tells which lie turned on the grid. */
function takerOf(
  lots: readonly Lot[],
  { kinds }: Work,
): (kind: number) => { blank: Blank; turned: boolean } {
  const waiting = lots.flatMap((lot) =>
    lot.blanks.map((blank, index) => ({ blank, kind: lot.kinds[index]! })),
  );
  return (kind) => {
    const at = waiting.findIndex((one) => one.kind === kind);
    const { blank } = waiting.splice(at, 1)[0]!;
    const { size } = blank.piece;
    const { width, height } = kinds[kind]!;
    return { blank, turned: size.width < size.height !== width < height };
  };
}

function likeBesideLike(slots: readonly (readonly Lot[])[]): (readonly Lot[])[] {
  const keyOf = (lots: readonly Lot[]): string =>
    lots
      .map((lot) => lot.type)
      .sort()
      .join(' | ');
  const groups = new Map<string, (readonly Lot[])[]>();
  for (const slot of slots) groups.set(keyOf(slot), [...(groups.get(keyOf(slot)) ?? []), slot]);
  const firstCard = (lots: readonly Lot[]): number => Math.min(...lots.flatMap((lot) => lot.cards));
  return [...groups.values()].flatMap((group) => group.sort((a, b) => firstCard(a) - firstCard(b)));
}

function checkTogether(lot: Lot, oracle: Oracle, sheet: Size, settings: CutSettings): void {
  if (oracle.fits([lot])) return;
  const [card] = lot.cards as [number];
  const layers = lot.pieces.map((piece) => piece.layer).join(', ');
  throw new Refusal({
    kind: 'does-not-fit',
    field: `cards[${card}]`,
    received: layers,
    message: `Expected ${layers} of card ${card} to come from one sheet of ${formatSize(sheet, settings.ruler)} but together they are too large`,
    mend: 'Give these layers different papers, or take a pad with larger sheets.',
  });
}
