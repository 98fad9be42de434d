import type { CutTree, Piece, Slot } from '../../cutting/piece.ts';
import type { Size } from '../../lengths/length.ts';
import type { Pad, Sheet, Side } from '../../pad/pad.ts';

/**
 * How the pieces of a sheet are laid on it: as suits the cuts, all along the sheet so that its prints stand, or all a
 * quarter turned, as the prints of the sheet point sideways in their swatches.
 */
export type Stance = 'any' | 'along' | 'turned';

export function stanceOf({ front, back }: Sheet, keepUp: boolean): Stance {
  const sides = [front, back].filter((side): side is Side => side !== null);
  if (sides.every(({ pattern }) => pattern.direction === 'none')) return 'any';
  const ups = sides.filter(({ pattern }) => pattern.direction === 'one-way');
  return !keepUp && ups.length > 0 && ups.every(pointsSideways) ? 'turned' : 'along';
}

function pointsSideways({ pattern }: Side): boolean {
  return pattern.up === 90 || pattern.up === 270;
}

/** Whether a print would lie although all pieces of its sheet are laid as its stance says. */
export function liesAsLaid(sheet: Sheet, keepUp: boolean): boolean {
  return (
    stanceOf(sheet, keepUp) === 'along' &&
    [sheet.front, sheet.back].some(
      (side) => side?.pattern.direction === 'one-way' && pointsSideways(side),
    )
  );
}

/** The pad as its prints show on pieces that are laid along the sheet: those of turned pieces by a quarter on. */
export function asLaid(pad: Pad, keepUp: boolean): Pad {
  return {
    ...pad,
    sheets: pad.sheets.map((sheet) =>
      stanceOf(sheet, keepUp) === 'turned'
        ? { ...sheet, front: quarterOn(sheet.front), back: quarterOn(sheet.back) }
        : sheet,
    ),
  };
}

function quarterOn(side: Side | null): Side | null {
  if (side === null) return null;
  const up = ((side.pattern.up + 90) % 360) as Side['pattern']['up'];
  return { ...side, pattern: { ...side.pattern, up } };
}

export function onItsSide({ width, height }: Size): Size {
  return { width: height, height: width };
}

/** A slot mirrored at the diagonal of its sheet: every piece, as it was asked for, is then turned by a quarter. */
export function turnedSlot({ id, pieces, cuts }: Slot, asked: readonly Piece[]): Slot {
  return {
    id,
    pieces: pieces.map((placed) => ({
      ...placed,
      piece: asked.find((piece) => piece.id === placed.piece.id)!,
      x: placed.y,
      y: placed.x,
      turned: placed.piece.size.width !== placed.piece.size.height && !placed.turned,
    })),
    cuts: turnedCuts(cuts),
  };
}

function turnedCuts(cuts: CutTree): CutTree {
  if (cuts.kind === 'piece') return cuts;
  if (cuts.kind === 'rest') return { kind: 'rest', size: onItsSide(cuts.size) };
  return {
    ...cuts,
    way: cuts.way === 'vertical' ? 'horizontal' : 'vertical',
    first: turnedCuts(cuts.first),
    second: turnedCuts(cuts.second),
  };
}
