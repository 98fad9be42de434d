import type { Piece, Slot } from './piece.ts';
import { spinOf, squareCornerOf } from './pairs.ts';
import type { Blank } from './pairs.ts';

/** A lot that is one triangle, and what shares its rectangle. */
interface Single {
  readonly piece: Piece;
  mate: Single | null;
}

/**
 * Lots that are one triangle each, put together by two where they are equal and of two cards:
 *
 *      card 1 upper, card 2 upper,      ┌───────────╱     both show the side of the sheet that the
 *      card 1 lower, card 2 lower       │ card 1  ╱ │     rectangle shows: a tie that the plan has to keep
 *                                       │       ╱   │
 *      become two rectangles            │     ╱     │     ┌───────────╱
 *                                       ╱ 2 lower   │     ╱ 2 upper, 1 lower
 *
 * As many as can be, first those that need not be turned against each other. Other lots stay as they are.
 */
export function pairedAcross(
  lots: readonly Blank[][],
  keepUp: boolean,
  homeOf: (piece: Piece) => unknown,
): Blank[][] {
  const singles = lots.flatMap((blanks): Single[] =>
    blanks.length === 1 && isLone(blanks[0]!) ? [{ piece: blanks[0]!.piece, mate: null }] : [],
  );
  const may = (one: Single, other: Single, turned: boolean): boolean => {
    if (one.piece.card === other.piece.card || homeOf(one.piece) !== homeOf(other.piece))
      return false;
    const spin = spinOf(one.piece, other.piece);
    const held = keepUp || one.piece.keepUp === true || other.piece.keepUp === true;
    return spin !== null && (spin === 0 || (turned && !held));
  };
  for (const turned of [false, true])
    for (const [at, one] of singles.entries()) {
      if (one.mate !== null) continue;
      const other = singles.slice(at + 1).find((two) => two.mate === null && may(one, two, turned));
      if (other !== undefined) marry(one, other);
    }
  settleRest(singles, may);
  const mates = new Map(singles.map((single) => [single.piece, single.mate?.piece ?? null]));
  return lots.flatMap((blanks): Blank[][] => {
    const [{ piece }] = blanks as [Blank];
    const mate = mates.get(piece) ?? null;
    if (mate === null) return [blanks];
    const first = singles.findIndex((one) => one.piece === piece);
    const second = singles.findIndex((one) => one.piece === mate);
    if (second < first) return [];
    return [[{ piece, twin: { piece: mate, spin: spinOf(piece, mate)! } }]];
  });
}

/** Two that are left over, such as both triangles of the last card, take apart a pair that suits them. */
function settleRest(
  singles: readonly Single[],
  may: (one: Single, other: Single, turned: boolean) => boolean,
): void {
  const free = singles.filter(({ mate }) => mate === null);
  for (const [at, one] of free.entries())
    for (const two of free.slice(at + 1)) {
      if (one.mate !== null || two.mate !== null) continue;
      const wed = singles.find(
        (single) => single.mate !== null && may(one, single, true) && may(two, single.mate, true),
      );
      if (wed === undefined) continue;
      const other = wed.mate!;
      marry(one, wed);
      marry(two, other);
    }
}

function marry(one: Single, other: Single): void {
  one.mate = other;
  other.mate = one;
}

function isLone({ piece, twin }: Blank): boolean {
  return twin === undefined && squareCornerOf(piece) !== null;
}

/** Whether a piece shares its rectangle with one of another card: both show the same side of the sheet. */
export function isTied({ pieces }: Slot, card: number, layer: string): boolean {
  const own = pieces.find(({ piece }) => piece.card === card && piece.layer === layer);
  const mate = pieces.find(({ piece }) => piece.id === own?.pair?.with);
  return mate !== undefined && mate.piece.card !== card;
}
