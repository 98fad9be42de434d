import type { Length, Ruler } from '../lengths/length.ts';
import type { CutLine } from './cut-lines.ts';
import { sharedArea } from './laid.ts';
import type { Taken } from './laid.ts';
import { lengthSaid } from './said.ts';

/** Parts of the cut's length at which its measure may lie, the best first. */
const PLACES = [
  0.82, 0.18, 0.88, 0.12, 0.76, 0.24, 0.7, 0.3, 0.64, 0.36, 0.58, 0.42, 0.5, 0.94, 0.06,
] as const;
/** Height of the plate with the length, and width of one of its letters, in units of the drawing. */
const PLATE = 9;
const LETTER = 2.9;

/**
 * Where the measure of a cut, from the edge at the stop to the blade, hides least of the labels and numbers.
 *
 * Takes       the cut as it is drawn, the length that is said, and the room that labels and numbers take,
 *             all in units of the drawing.
 * Gives       a part of the cut's length, in (0, 1), from its upper or left end.
 */
export function measurePlace(
  { part, from, to }: Pick<CutLine, 'part' | 'from' | 'to'>,
  at: Length,
  ruler: Ruler,
  labels: readonly Taken[],
): number {
  const down = from.x === to.x;
  const wide = LETTER * lengthSaid(at, ruler).length + 4;
  const [along, across] = down ? [wide, PLATE] : [PLATE, wide];
  const long = down ? from.x - part.x : from.y - part.y;
  // A plate that finds no room on its measure stands beyond the blade.
  const reach = long > along + 6 ? long : long + along + 3;
  const hidden = PLACES.map((place) => {
    const band = down
      ? { x: part.x, y: part.y + place * part.height - across / 2, width: reach, height: across }
      : { x: part.x + place * part.width - across / 2, y: part.y, width: across, height: reach };
    return labels.reduce((sum, label) => sum + sharedArea(band, label), 0);
  });
  return PLACES[hidden.indexOf(Math.min(...hidden))]!;
}
