import { slants } from '../cutting/finishing-steps.ts';
import type { Piece } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Length } from '../lengths/length.ts';
import type { Mark } from './drawing.ts';
import { disc } from './drawing.ts';
import { CUT, PAPER } from './look.ts';
import { placeOfMark } from './step-words.ts';

/** Radius of a mark in mm of the page. */
const RADIUS = 0.9;

/** The two pencil marks of every slant of a piece, in its own mm from its middle. */
export function pencilMarks({ shape, size }: Piece, scale: number): Mark[] {
  if (shape.kind !== 'corners') return [];
  return slants(shape, size).flatMap((ends) =>
    ends.map((end): Mark => {
      const { x, y } = placeOfMark(end, size);
      const fromMiddle = (at: number, whole: number): number =>
        toMillimetres((2 * at - whole) as Length) / 2;
      return {
        kind: 'area',
        corners: disc(fromMiddle(x, size.width), fromMiddle(y, size.height), RADIUS / scale),
        fill: PAPER,
        edge: { width: 0.45 / scale, colour: CUT },
      };
    }),
  );
}
