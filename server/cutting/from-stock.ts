import type { Size } from '../lengths/length.ts';
import type { PlacedPiece } from './piece.ts';

/** A part of a sheet that was kept, lying as it lay on its sheet. */
export interface StockPart {
  readonly id: string;
  readonly sheet: string;
  readonly size: Size;
}

/** A piece that is cut from a kept part instead of a new sheet. */
export interface FromStock {
  readonly part: string;
  readonly slot: string;
  readonly placed: PlacedPiece;
}

/** A slot as far as it is asked here: which sheet it is cut from, and its pieces. */
export interface SlotOnSheet {
  readonly id: string;
  readonly sheet: string;
  readonly pieces: readonly PlacedPiece[];
}

/**
 * Which pieces of a batch come out of parts that were kept of the same sheets: the largest piece first,
 * each out of the smallest part that holds it, one piece (or pair of triangles) a part. A piece lies on the part as it would
 * lie on the sheet, so a print keeps its up.
 *
 * Gives  slots that come out of the stock as a whole first, because each of them spares a sheet.
 */
export function fromStock(slots: readonly SlotOnSheet[], parts: readonly StockPart[]): FromStock[] {
  const left = [...parts].sort((a, b) => area(a.size) - area(b.size));
  const taken: FromStock[] = [];
  const takeFor = (slot: SlotOnSheet, whole: boolean): void => {
    const stock = [...left];
    const own = rectanglesOf(slot.pieces).flatMap((pieces): FromStock[] => {
      const size = lying(pieces[0]!);
      const at = stock.findIndex((part) => part.sheet === slot.sheet && holds(part.size, size));
      if (at < 0) return [];
      const part = stock.splice(at, 1)[0]!.id;
      return pieces.map((placed) => ({ part, slot: slot.id, placed }));
    });
    if (whole && own.length < slot.pieces.length) return;
    taken.push(...own);
    left.splice(0, left.length, ...stock);
  };
  for (const slot of slots) takeFor(slot, true);
  const spared = new Set(taken.map(({ slot }) => slot));
  for (const slot of slots) if (!spared.has(slot.id)) takeFor(slot, false);
  return taken;
}

/** The largest first; two triangles that are cut as one rectangle stay together. */
function rectanglesOf(pieces: readonly PlacedPiece[]): PlacedPiece[][] {
  const first = pieces.filter(
    ({ pair }, at) =>
      pair === undefined || !pieces.slice(0, at).some(({ piece }) => piece.id === pair.with),
  );
  return first
    .map((placed) => [placed, ...pieces.filter(({ piece }) => piece.id === placed.pair?.with)])
    .sort(([a], [b]) => area(b!.piece.size) - area(a!.piece.size));
}

function lying({ piece, turned }: PlacedPiece): Size {
  const { width, height } = piece.size;
  return turned ? { width: height, height: width } : { width, height };
}

function holds(part: Size, piece: Size): boolean {
  return piece.width <= part.width && piece.height <= part.height;
}

function area({ width, height }: Size): number {
  return width * height;
}
