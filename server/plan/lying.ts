import type { PlacedPiece } from '../cutting/piece.ts';
import type { PatternTraits } from '../pattern/traits.ts';

/**
 * Whether a one-way print would lie on its side on this piece. A piece cut along the sheet shows the
 * print as the swatch does, a turned piece a quarter turn from it; half turns are free, as a cut
 * piece can be spun. Square pieces can be spun by quarters too. Two triangles of one rectangle are spun
 * together: one that is turned against the other cannot stand.
 */
export function lies(pattern: PatternTraits, placed: PlacedPiece): boolean {
  if (pattern.direction !== 'one-way') return false;
  if ((placed.pair?.spin ?? 0) !== 0) return true;
  if (placed.piece.size.width === placed.piece.size.height) return false;
  const quarter = pattern.up === 90 || pattern.up === 270;
  return quarter !== placed.turned;
}
