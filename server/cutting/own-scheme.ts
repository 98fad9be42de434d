import { formatSize } from '../lengths/format-length.ts';
import type { Size } from '../lengths/length.ts';
import { Refusal, expected } from '../refusals/refusal.ts';
import { slotOf } from './cut-scheme.ts';
import { fewestOf } from './fewest-across.ts';
import { fewestSheets } from './fewest-sheets.ts';
import { workOn } from './lots.ts';
import type { Lot, Work } from './lots.ts';
import { Oracle } from './oracle.ts';
import { piecesIn } from './pairs.ts';
import type { CuttingScheme, Piece } from './piece.ts';
import type { CutSettings, OwnSlot } from './settings.ts';

/**
 * The cuts for a table of her own: which slot gives which piece to which card.
 *
 * Takes    the pieces of a batch, her slots, each with the pieces it gives, the size of a sheet and the
 *          settings.
 * Gives    the scheme with exactly these slots, in her order and by her names, and the bound on sheets
 *          that any scheme has.
 * Refuses  a piece that is not of the batch, one given twice or by no slot, pieces of one card and paper
 *          in two slots, pieces of two papers of one card in one, and a slot that edge-to-edge cuts
 *          cannot bring out of a sheet; each with the slot and the piece.
 * Good up to  eleven different pieces a slot; whether more fit is tried by rules of thumb.
 */
export function ownScheme(
  pieces: readonly Piece[],
  table: readonly OwnSlot[],
  sheet: Size,
  settings: CutSettings,
): CuttingScheme {
  checkNames(table);
  const homes = homesOf(pieces, table);
  checkPapers(pieces, homes, table);
  const work = workOn(pieces, sheet, settings, ({ id }) => homes.get(id)?.slot);
  const oracle = new Oracle(work);
  const slots = table.map((own, at) => {
    const lots = work.lots.filter((lot) => homes.get(lot.pieces[0]!.id)?.slot === at);
    checkFits(own, at, lots, work, oracle, sheet, settings);
    return slotOf(own.slot, lots, sheet, work, oracle, settings);
  });
  const fewest = fewestOf(pieces, sheet, settings) ?? fewestSheets(work, oracle);
  return { sheet, slots, fewestSheets: fewest, proven: slots.length === fewest };
}

/** Where in her table a piece stands. */
interface Home {
  readonly slot: number;
  readonly row: number;
}

function checkNames(table: readonly OwnSlot[]): void {
  for (const [at, { slot, pieces }] of table.entries()) {
    if (table.findIndex((other) => other.slot === slot) !== at)
      throw expected(
        'a name of its own for every slot',
        `scheme[${at}].slot`,
        slot,
        'Give this slot another name, or put its pieces into the first one.',
        'clash',
      );
    if (pieces.length === 0)
      throw expected(
        `at least one piece from slot "${slot}"`,
        `scheme[${at}].pieces`,
        pieces,
        'Leave the slot out, or say which piece it gives.',
      );
  }
}

function homesOf(pieces: readonly Piece[], table: readonly OwnSlot[]): Map<string, Home> {
  const homes = new Map<string, Home>();
  for (const [slot, own] of table.entries())
    for (const [row, { card, layer }] of own.pieces.entries()) {
      const field = `scheme[${slot}].pieces[${row}]`;
      const said = `"${layer}" of card ${card}`;
      const piece = pieces.find((one) => one.card === card && one.layer === layer);
      if (piece === undefined)
        throw new Refusal({
          kind: 'not-found',
          field,
          received: `card ${card}, ${layer}`,
          message: `Expected slot "${own.slot}" to give pieces of patterned paper of the batch but ${said} is none`,
          mend: 'Look up the number of the card and the name of its layer; cardstock is cut apart from it.',
        });
      const before = homes.get(piece.id);
      if (before !== undefined)
        throw new Refusal({
          kind: 'clash',
          field,
          received: `card ${card}, ${layer}`,
          message: `Expected ${said} to be cut once but slots "${table[before.slot]!.slot}" and "${own.slot}" both give it`,
          mend: 'Take it out of one of them.',
        });
      homes.set(piece.id, { slot, row });
    }
  const missing = pieces.find(({ id }) => !homes.has(id));
  if (missing !== undefined)
    throw expected(
      `a slot that gives "${missing.layer}" to card ${missing.card}`,
      'scheme',
      table.map(({ slot }) => slot),
      'Add this piece to a slot with room for it, or add a slot.',
      'does-not-fit',
    );
  return homes;
}

function checkPapers(
  pieces: readonly Piece[],
  homes: ReadonlyMap<string, Home>,
  table: readonly OwnSlot[],
): void {
  for (const [at, one] of pieces.entries())
    for (const other of pieces.slice(at + 1)) {
      if (one.card !== other.card) continue;
      const [a, b] = [homes.get(one.id)!, homes.get(other.id)!];
      const together = a.slot === b.slot;
      if (together === (one.paper === other.paper)) continue;
      const must = together ? 'come from different sheets' : 'come from one sheet';
      const where = together
        ? `slot "${table[b.slot]!.slot}" gives both`
        : `slots "${table[a.slot]!.slot}" and "${table[b.slot]!.slot}" give them`;
      throw new Refusal({
        kind: 'does-not-fit',
        field: `scheme[${b.slot}].pieces[${b.row}]`,
        received: `card ${other.card}, ${other.layer}`,
        message: `Expected "${one.layer}" and "${other.layer}" of card ${one.card} to ${must} but ${where}`,
        mend: together ? 'Move one of them to another slot.' : 'Put both into one slot.',
      });
    }
}

/** Names the first piece for which the ones before it leave no room. */
function checkFits(
  own: OwnSlot,
  at: number,
  lots: readonly Lot[],
  work: Work,
  oracle: Oracle,
  sheet: Size,
  { ruler }: CutSettings,
): void {
  if (oracle.settles(lots)) return;
  const rowOf = (piece: Piece): number =>
    own.pieces.findIndex(({ card, layer }) => card === piece.card && layer === piece.layer);
  const single = lots
    .flatMap(({ blanks, kinds }) =>
      blanks.map((blank, index) => ({ blank, piece: blank.piece, kind: kinds[index]! })),
    )
    .sort((a, b) => rowOf(a.piece) - rowOf(b.piece));
  const asLot = (count: number): Lot => ({
    ...lots[0]!,
    pieces: piecesIn(single.slice(0, count).map(({ blank }) => blank)),
    blanks: single.slice(0, count).map(({ blank }) => blank),
    kinds: single.slice(0, count).map(({ kind }) => kind),
  });
  const over = single.findIndex((_, index) => !oracle.settles([asLot(index + 1)]));
  const { piece } = single[Math.max(0, over)]!;
  throw new Refusal({
    kind: 'does-not-fit',
    field: `scheme[${at}].pieces[${rowOf(piece)}]`,
    received: `card ${piece.card}, ${piece.layer}`,
    message: `Expected slot "${own.slot}" to come out of one sheet of ${formatSize(sheet, ruler)} by edge-to-edge cuts but "${piece.layer}" of card ${piece.card} (${formatSize(piece.size, ruler)}) has no room beside the pieces before it${work.exact ? '' : ', measured to the marks of the ruler'}`,
    mend: 'Move this piece to another slot, or add a slot for it.',
  });
}
