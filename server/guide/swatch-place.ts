import type { PlacedPiece, Slot } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Size } from '../lengths/length.ts';
import type { PatternTraits } from '../pattern/traits.ts';
import type { Turn } from './paint.ts';

export type Face = 'front' | 'back';

/** Where on a side's swatch a piece is cut from, and how that part is turned to lie on the card. */
export interface SwatchPlace {
  /** Upper left corner of the part, in mm on the side's own swatch. */
  readonly x: number;
  readonly y: number;
  readonly turned: Turn;
}

/** The face that lies up while a sheet is cut: the one that most of its pieces show, else the front. */
export function faceUp(slot: Slot, faceOf: (piece: PlacedPiece) => Face): Face {
  const backs = slot.pieces.filter((piece) => faceOf(piece) === 'back').length;
  return 2 * backs > slot.pieces.length ? 'back' : 'front';
}

/**
 * Where a piece lies on the swatch of the side that it shows. The cutting scheme is laid on the face
 * that is up; a piece that shows the other face is cut through it and lies mirrored there, the sheet
 * being turned over sideways, like a page.
 */
export function swatchPlace(
  placed: PlacedPiece,
  sheet: Size,
  otherFace: boolean,
  pattern: PatternTraits | null,
): SwatchPlace {
  const across = placed.turned ? placed.piece.size.height : placed.piece.size.width;
  const x = otherFace ? sheet.width - placed.x - across : placed.x;
  return {
    x: toMillimetres(x as typeof placed.x),
    y: toMillimetres(placed.y),
    turned: turnOf(placed, pattern),
  };
}

/**
 * A piece may be spun by half turns; a one-way print is spun so that its up points up, where it can be. A
 * triangle that lies turned against the one it shares its rectangle with is turned back.
 */
function turnOf({ piece, turned, pair }: PlacedPiece, pattern: PatternTraits | null): Turn {
  const square = piece.size.width === piece.size.height;
  const turns: readonly Turn[] = square ? [0, 90, 180, 270] : turned ? [90, 270] : [0, 180];
  const up = pattern?.direction === 'one-way' ? pattern.up : 0;
  const turn = turns.includes(up) ? up : turns[0]!;
  return ((turn + 360 - (pair?.spin ?? 0)) % 360) as Turn;
}
