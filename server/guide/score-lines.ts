import type { PlacedPiece } from '../cutting/piece.ts';
import type { Fold } from '../layouts/layout.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Mark } from './drawing.ts';
import { INK } from './look.ts';
import { laid } from './laid.ts';

/** Where a base is scored and folded, dotted on the sheet that it is cut from. */
export function scoreLines(placed: PlacedPiece, fold: Fold | null, scale: number): Mark[] {
  if (fold === null) return [];
  const { x, y, width, height } = laid(placed, scale);
  // A piece that lies turned is turned back by a quarter, clockwise: its left edge lies at the bottom.
  const down = (fold.scoreFrom === 'left') !== placed.turned;
  return fold.scores.map((score): Mark => {
    const away = scale * toMillimetres(score);
    const at = placed.turned && fold.scoreFrom === 'left' ? height - away : away;
    return {
      kind: 'line',
      from: down ? { x: x + at, y } : { x, y: y + at },
      to: down ? { x: x + at, y: y + height } : { x: x + width, y: y + at },
      width: 0.4,
      colour: INK,
      dashes: [0.5, 1.4],
    };
  });
}
