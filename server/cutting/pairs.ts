import type { Spin } from './piece.ts';
import type { Piece } from './piece.ts';

/** What one rectangle of the sheet becomes: a piece, or two equal triangles cut apart from corner to corner. */
export interface Blank {
  readonly piece: Piece;
  readonly twin?: Twin;
}

/** The other triangle of the rectangle. */
export interface Twin {
  readonly piece: Piece;
  /** How it is turned, clockwise, to fill the half that the first leaves. */
  readonly spin: Spin;
}

/**
 * Pairs equal triangles that are half of the rectangle around them:
 *
 *      ┌───────────╱        the first keeps its corner, the other lies in the
 *      │ first   ╱ │        opposite one: as it will lie on the card when that
 *      │       ╱   │        is its corner there, else turned, by half or (of a
 *      │     ╱     │        square) by a quarter
 *      │   ╱ other │
 *      ╱───────────┘
 *
 * Takes  pieces that may share a rectangle, and whether nothing may be turned.
 * Gives  as few rectangles as there can be, with as few turned triangles; a piece that keeps its up is
 *        never turned for it. All pieces come out once, in their order.
 */
export function paired(pieces: readonly Piece[], keepUp: boolean): Blank[] {
  const twins = new Map<Piece, Twin>();
  const taken = new Set<Piece>();
  const triangles = pieces.filter((piece) => squareCornerOf(piece) !== null);
  for (const spins of SPINS)
    for (const [at, piece] of triangles.entries()) {
      if (taken.has(piece)) continue;
      const twin = triangles
        .slice(at + 1)
        .filter((other) => !taken.has(other))
        .map((other) => ({ piece: other, spin: spinOf(piece, other) }))
        .find(({ piece: other, spin }) => {
          if (spin === null || !spins.includes(spin)) return false;
          return spin === 0 || !(keepUp || piece.keepUp === true || other.keepUp === true);
        });
      if (twin === undefined) continue;
      twins.set(piece, { piece: twin.piece, spin: twin.spin! });
      taken.add(piece).add(twin.piece);
    }
  return pieces.flatMap((piece): Blank[] => {
    const twin = twins.get(piece);
    if (twin !== undefined) return [{ piece, twin }];
    return taken.has(piece) ? [] : [{ piece }];
  });
}

/** The least turning first. */
const SPINS: readonly (readonly Spin[])[] = [[0], [180], [90, 270]];

/** All pieces of some blanks. */
export function piecesIn(blanks: readonly Blank[]): Piece[] {
  return blanks.flatMap(({ piece, twin }) => (twin === undefined ? [piece] : [piece, twin.piece]));
}

/** How `other` is turned to lie in the half that `piece` leaves; null where it does not fit there. */
export function spinOf(piece: Piece, other: Piece): Spin | null {
  const { width, height } = piece.size;
  if (other.size.width !== width || other.size.height !== height) return null;
  const quarters = (squareCornerOf(piece)! + 2 - squareCornerOf(other)! + 4) % 4;
  return quarters % 2 === 1 && width !== height ? null : ((90 * quarters) as Spin);
}

/**
 * Where a triangle that is half of its rectangle has its square corner: 0 upper left, then clockwise;
 * null for any other shape.
 */
export function squareCornerOf({ shape, size }: Piece): 0 | 1 | 2 | 3 | null {
  if (shape.kind !== 'corners' || shape.points.length !== 3) return null;
  const { width, height } = size;
  const corners = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ] as const;
  const missing = corners.findIndex(
    ([x, y]) => !shape.points.some((point) => point.x === x && point.y === y),
  );
  const all = shape.points.every((point) =>
    corners.some(([x, y]) => point.x === x && point.y === y),
  );
  return all && missing >= 0 ? (((missing + 2) % 4) as 0 | 1 | 2 | 3) : null;
}
