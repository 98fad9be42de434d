import type { Size } from '../lengths/length.ts';
import { fewestSheets } from './fewest-sheets.ts';
import { workOn } from './lots.ts';
import { Oracle } from './oracle.ts';
import { squareCornerOf } from './pairs.ts';
import type { Piece } from './piece.ts';
import type { CutSettings } from './settings.ts';

/** Whether triangles of two cards may share a rectangle. */
export function mayPairAcross({ apart, pairAcross = false }: CutSettings): boolean {
  return apart && pairAcross;
}

/**
 * A number of sheets below which no scheme can go, whichever triangles share a rectangle: of n equal ones at
 * least n / 2 rectangles are cut, which may lie on any sheet and turned; the other pieces as they are. Null
 * where triangles of two cards stay apart, as then the lots themselves say it.
 */
export function fewestOf(
  pieces: readonly Piece[],
  sheet: Size,
  settings: CutSettings,
): number | null {
  if (!mayPairAcross(settings)) return null;
  const triangles = pieces.filter((piece) => squareCornerOf(piece) !== null);
  const equal = new Map<string, Piece[]>();
  for (const piece of triangles) {
    const key = `${piece.size.width} ${piece.size.height}`;
    equal.set(key, [...(equal.get(key) ?? []), piece]);
  }
  const rectangles = [...equal.values()].flatMap((alike) =>
    alike.slice(0, Math.ceil(alike.length / 2)),
  );
  const loose = rectangles.map((piece, at): Piece => ({
    ...piece,
    card: -1 - at,
    shape: { kind: 'rectangle' },
  }));
  const others = pieces.filter((piece) => !triangles.includes(piece));
  const work = workOn([...others, ...loose], sheet, { ...settings, pairAcross: false });
  return fewestSheets(work, new Oracle(work));
}
