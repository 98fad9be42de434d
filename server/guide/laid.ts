import type { PlacedPiece } from '../cutting/piece.ts';
import type { Fold } from '../layouts/layout.ts';
import { shapeCorners } from '../layouts/outline.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Length } from '../lengths/length.ts';
import type { Spot } from './drawing.ts';
import type { Turn } from './paint.ts';

/** A part of the drawing that is taken: nothing else is written over it. */
export interface Taken {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The area that two such parts have in common. */
export function sharedArea(a: Taken, b: Taken): number {
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return Math.max(0, across) * Math.max(0, down);
}

/** A piece as it is drawn, in mm of the page. */
export function laid({ piece, x, y, turned }: PlacedPiece, scale: number): Taken {
  const [width, height] = turned
    ? [piece.size.height, piece.size.width]
    : [piece.size.width, piece.size.height];
  return {
    x: scale * toMillimetres(x),
    y: scale * toMillimetres(y),
    width: scale * toMillimetres(width),
    height: scale * toMillimetres(height),
  };
}

/** How a piece of plain paper is turned to lie on the card. */
export function plainTurn({ turned, pair }: PlacedPiece): Turn {
  return (((turned ? 90 : 0) + 360 - (pair?.spin ?? 0)) % 360) as Turn;
}

/** A piece on its sheet: its turn, clockwise, to lie on its card (null for plain paper), the side it shows, its fold. */
export interface LaidPiece {
  readonly placed: PlacedPiece;
  readonly turn: Turn | null;
  readonly showsOther: boolean;
  /** How it is folded later, where it is. */
  readonly fold?: Fold | null;
}

/** How the pieces of a sheet lie on it. */
export interface Lying {
  /** How a piece is turned, clockwise, to lie on its card; null for plain paper, which has no up. */
  readonly turnOf: (placed: PlacedPiece) => Turn | null;
  /** True for pieces that show the side that lies down. */
  readonly showsOther: (placed: PlacedPiece) => boolean;
  /** Where a piece is scored later; left out for papers, which are not folded. */
  readonly foldOf?: (placed: PlacedPiece) => Fold | null;
}

/** One of these pieces. */
export function laidPiece(placed: PlacedPiece, { turnOf, showsOther, foldOf }: Lying): LaidPiece {
  return {
    placed,
    turn: turnOf(placed),
    showsOther: showsOther(placed),
    fold: foldOf?.(placed) ?? null,
  };
}

/**
 * From the piece as it lies on its card, in 1/320 mm from its upper left corner, to the sheet, in mm: it is
 * turned back, and where it shows the side that lies down, seen through the sheet, left and right change.
 */
export function fromCardToSheet({ placed, turn, showsOther }: LaidPiece): (at: Spot) => Spot {
  const { x, y, width, height } = laid(placed, 1);
  const { size } = placed.piece;
  const quarters = (turn ?? plainTurn(placed)) / 90;
  const mirrored = showsOther ? -1 : 1;
  return (at) => {
    let [across, down] = [at.x - size.width / 2, at.y - size.height / 2];
    for (let turned = 0; turned < quarters; turned++) [across, down] = [down, -across];
    return {
      x: x + width / 2 + mirrored * toMillimetres(across as Length),
      y: y + height / 2 + toMillimetres(down as Length),
    };
  };
}

/** What is kept of a piece, as it lies on its sheet, in mm of the sheet. */
export function keptOnSheet(one: LaidPiece): Spot[] {
  const { shape, size } = one.placed.piece;
  return shapeCorners(shape, size).map(fromCardToSheet(one));
}
