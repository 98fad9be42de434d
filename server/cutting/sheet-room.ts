import type { Size } from '../lengths/length.ts';
import { workOn } from './lots.ts';
import type { Lot } from './lots.ts';
import { Oracle } from './oracle.ts';
import type { Piece } from './piece.ts';
import type { CutSettings } from './settings.ts';

/** Pieces of one card that are cut from one paper. */
export interface PaperLot {
  readonly card: number;
  readonly paper: string;
  readonly pieces: readonly Piece[];
  /** Part of a sheet that they fill. */
  readonly area: number;
}

/** What comes out of one sheet together. */
export interface SheetRoom {
  /** In the order of the pieces. */
  readonly lots: readonly PaperLot[];
  /** Whether these lots, by their numbers, come out of one sheet; `upright` when nothing may be turned. */
  fits(lots: readonly number[], upright: boolean): boolean;
}

/**
 * Asks of any lots whether one sheet holds them, whoever decides which they are. Two papers of one card
 * never share a sheet.
 *
 * Takes       the pieces of a batch, the size of a sheet, and the settings.
 * Good up to  a dozen pieces a sheet; beyond that some that would fit are told not to.
 */
export function sheetRoom(pieces: readonly Piece[], sheet: Size, settings: CutSettings): SheetRoom {
  const ways = [false, true].map((upright) => {
    const keepUp = settings.keepUp || upright;
    const work = workOn(keepUp ? pieces.map(kept) : pieces, sheet, settings);
    return { work, oracle: new Oracle(work) };
  });
  const [free, standing] = ways as [(typeof ways)[0], (typeof ways)[0]];
  const whole = sheet.width * sheet.height;
  return {
    lots: free.work.lots.map(({ cards, pieces: own, blanks }) => ({
      card: cards[0]!,
      paper: own[0]!.paper,
      pieces: own,
      area: blanks.reduce((sum, { piece: { size } }) => sum + size.width * size.height, 0) / whole,
    })),
    fits: (numbers, upright) => {
      const { work, oracle } = upright ? standing : free;
      const lots = numbers.map((number) => work.lots[number]!);
      return shareable(lots, work.mayShare) && oracle.fits(lots);
    },
  };
}

/** A piece that cannot stand on the sheet at all stays as it is: better lying than nowhere. */
function kept(piece: Piece): Piece {
  return { ...piece, keepUp: true };
}

function shareable(lots: readonly Lot[], mayShare: (a: Lot, b: Lot) => boolean): boolean {
  return lots.every((lot, at) => lots.slice(at + 1).every((other) => mayShare(lot, other)));
}
