import { INCH, MILLIMETRE, units } from '../../lengths/length.ts';
import type { Box, Layout } from '../layout.ts';
import { design, focal, greeting, panel, strip } from './board.ts';
import type { Board } from './board.ts';

/**
 * Designs whose pieces fill whole sheets: 6 x 6 in for the US card, 15 x 15 cm for A6. Their papers
 * change places between cards, so sheets cut alike make cards that each carry all of the papers.
 * Bare cardstock shows between the pieces and takes the greeting.
 */

/**
 * A wide panel over a square and a bar: three sheets, six cards. Each sheet gives two of each piece:
 *
 *      ┌────────────┬──────┐
 *      │            │square│  half a sheet, cut twice
 *      │   wide     ├──────┤
 *      │            │ bar  │
 *      └────────────┴──────┘
 */
export function wideOverTwo(board: Board): Layout {
  const inches = board.ruler === 'in';
  const [wide, square, bar, words] = inches
    ? [
        at(board, 2, 2, 64, 48),
        at(board, 2, 54, 32, 32),
        at(board, 34, 54, 32, 16),
        at(board, 34, 72, 32, 14),
      ]
    : [
        at(board, 3, 3, 99, 75),
        at(board, 3, 95, 51, 50),
        at(board, 51, 95, 51, 25),
        at(board, 57, 123, 45, 22),
      ];
  return design(board, { id: 'wide-over-two', name: 'Wide Panel Over Two Tiles' }, 'top', [
    panel('wide', 'wide', wide),
    strip('bar', 'bar', bar),
    focal('square', 'square', square),
    greeting(words),
  ]);
}

/** A band across the foot with a square above it: four sheets, twelve cards. */
export function squareOverBand(board: Board): Layout {
  const inches = board.ruler === 'in';
  const [band, square, words] = inches
    ? [at(board, 2, 54, 64, 32), at(board, 18, 14, 32, 32), at(board, 10, 62, 48, 14)]
    : [at(board, 3, 95, 99, 50), at(board, 27, 24, 51, 50), at(board, 15, 108, 75, 22)];
  return design(board, { id: 'square-over-band', name: 'Square Over a Broad Band' }, 'top', [
    strip('band', 'band', band),
    focal('square', 'square', square),
    greeting(words),
  ]);
}

/** A square panel with a bar of another paper under it: four sheets, twelve cards. */
export function panelAboveBar(board: Board): Layout {
  const inches = board.ruler === 'in';
  const [square, bar, words] = inches
    ? [at(board, 10, 8, 48, 48), at(board, 10, 58, 48, 16), at(board, 14, 76, 40, 9)]
    : [at(board, 15, 15, 75, 75), at(board, 15, 93, 75, 25), at(board, 22, 122, 61, 16)];
  return design(board, { id: 'panel-above-bar', name: 'Square Panel Above a Bar' }, 'side', [
    panel('square', 'square', square),
    strip('bar', 'bar', bar),
    greeting(words),
  ]);
}

/** A box in marks of the ruler: 1/16 in or 1 mm. */
function at({ ruler }: Board, x: number, y: number, width: number, height: number): Box {
  const mark = ruler === 'in' ? INCH / 16 : MILLIMETRE;
  return {
    x: units(x * mark),
    y: units(y * mark),
    width: units(width * mark),
    height: units(height * mark),
  };
}
