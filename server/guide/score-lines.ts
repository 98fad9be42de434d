import type { PlacedPiece } from '../cutting/piece.ts';
import type { Fold } from '../layouts/layout.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Mark, Spot } from './drawing.ts';
import { INK } from './look.ts';
import { laid } from './laid.ts';
import type { Taken } from './laid.ts';

/** Where a base is scored and folded, dotted on the sheet that it is cut from. */
export function scoreLines(placed: PlacedPiece, fold: Fold | null, scale: number): Mark[] {
  return scores(placed, fold, scale).map(([from, to]): Mark => ({
    kind: 'line',
    from,
    to,
    width: 0.4,
    colour: INK,
    dashes: [0.5, 1.4],
  }));
}

/** The room that these lines take: a label stands clear of them. */
export function scoresTaken(placed: PlacedPiece, fold: Fold | null, scale: number): Taken[] {
  return scores(placed, fold, scale).map(([from, to]) => ({
    x: from.x - CLEAR,
    y: from.y - CLEAR,
    width: to.x - from.x + 2 * CLEAR,
    height: to.y - from.y + 2 * CLEAR,
  }));
}

/** In mm of the page. */
const CLEAR = 0.8;

function scores(placed: PlacedPiece, fold: Fold | null, scale: number): [Spot, Spot][] {
  if (fold === null) return [];
  const { x, y, width, height } = laid(placed, scale);
  // A piece that lies turned is turned back by a quarter, clockwise: its left edge lies at the bottom.
  const down = (fold.scoreFrom === 'left') !== placed.turned;
  return fold.scores.map((score): [Spot, Spot] => {
    const away = scale * toMillimetres(score);
    const at = placed.turned && fold.scoreFrom === 'left' ? height - away : away;
    return down
      ? [
          { x: x + at, y },
          { x: x + at, y: y + height },
        ]
      : [
          { x, y: y + at },
          { x: x + width, y: y + at },
        ];
  });
}
