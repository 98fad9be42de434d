import { units } from '../../lengths/length.ts';
import type { Layer, Layout } from '../layout.ts';
import {
  box,
  design,
  focal,
  front,
  greeting,
  greetingOn,
  inside,
  insideLong,
  insideTall,
  mat,
  matted,
  mattedPanel,
  panel,
  strip,
} from './board.ts';
import type { Board } from './board.ts';

/** A patterned panel with a matted band round its lower half and a greeting that rides on it. */
export function waistband(board: Board): Layout {
  const band = box(board, 0, 23, 32, 34);
  const label = box(board, 13, 20, 32, 27);
  return design(board, { id: 'waistband', name: 'Waistband Below the Middle' }, 'top', [
    panel('panel', 'field', front(board)),
    mat('band-mat', band),
    strip('band', 'band', insideLong(board, band)),
    ...greetingOn(board, label),
  ]);
}

/** Three ribbons of paper hang from the top edge, each longer than the last. */
export function threeStrips(board: Board): Layout {
  const label = box(board, 0, 34, 21, 40);
  return design(board, { id: 'three-strips', name: 'Three Strips Over a Panel' }, 'side', [
    panel('panel', 'field', front(board)),
    mat('left-mat', box(board, 2, 0, 10, 17)),
    strip('left', 'left', hung(board, 2, 10, 17)),
    mat('middle-mat', box(board, 12, 0, 20, 23)),
    strip('middle', 'middle', hung(board, 12, 20, 23)),
    mat('right-mat', box(board, 22, 0, 30, 29)),
    strip('right', 'right', hung(board, 22, 30, 29)),
    ...greetingOn(board, label, insideLong),
  ]);
}

/** A strip on its mat that starts at the panel's upper edge: reveals left, right and below. */
function hung(board: Board, x0: number, x1: number, y1: number): ReturnType<typeof box> {
  const outer = box(board, x0, 0, x1, y1);
  const tall = insideTall(board, outer);
  return { ...tall, height: units(outer.height - board.reveal) };
}

/** A wide paper beside a narrow column of two, with a greeting across the seam. */
export function besideTwo(board: Board): Layout {
  const label = box(board, 6, 29, 32, 37);
  return design(board, { id: 'beside-two', name: 'Tall Panel Beside Two' }, 'side', [
    panel('tall', 'tall', box(board, 0, 0, 20, 42)),
    panel('upper', 'upper', box(board, 21, 0, 32, 20)),
    panel('lower', 'lower', box(board, 21, 21, 32, 42)),
    ...greetingOn(board, label),
  ]);
}

/** Four columns on one ground line, each a step higher, with the greeting in the open corner. */
export function steps(board: Board): Layout {
  return design(board, { id: 'steps', name: 'Columns Going Up in Steps' }, 'side', [
    mat('ground', front(board)),
    strip('first', 'first', box(board, 1, 28, 8, 41)),
    strip('second', 'second', box(board, 9, 21, 16, 41)),
    strip('third', 'third', box(board, 17, 14, 23, 41)),
    strip('fourth', 'fourth', box(board, 24, 1, 31, 41)),
    greeting(box(board, 1, 5, 20, 11)),
  ]);
}

/** A standing band beside rungs that take turns between two papers. */
export function ladder(board: Board): Layout {
  const label = box(board, 4, 17, 26, 25);
  return design(board, { id: 'ladder', name: 'Ladder of Five Rungs' }, 'side', [
    strip('rail', 'rail', box(board, 0, 0, 9, 42)),
    strip('rung-1', 'odd', box(board, 10, 0, 32, 8)),
    strip('rung-2', 'even', box(board, 10, 9, 32, 16)),
    strip('rung-3', 'odd', box(board, 10, 17, 32, 25)),
    strip('rung-4', 'even', box(board, 10, 26, 32, 33)),
    strip('rung-5', 'odd', box(board, 10, 34, 32, 42)),
    ...greetingOn(board, label),
  ]);
}

/** Three bands like land, water and sky, with a round sun where they meet. */
export function horizons(board: Board): Layout {
  const sun = box(board, 17, 5, 29, 17);
  const round = { ...sun, height: sun.width };
  return design(board, { id: 'horizons', name: 'Three Horizons' }, 'top', [
    panel('sky', 'sky', box(board, 0, 0, 32, 20)),
    strip('water', 'water', box(board, 0, 21, 32, 31)),
    strip('land', 'land', box(board, 0, 32, 32, 42)),
    ...matted(board, focal, 'sun', round, { shape: { kind: 'circle' } }),
    greeting(box(board, 0, 23, 19, 29)),
  ]);
}

/** Pennants with a notched end reach in from the left, each a little further. */
export function pennants(board: Board): Layout {
  const flag = (id: string, y0: number, x1: number, y1: number): Layer => {
    const drawn = box(board, 0, y0, x1, y1);
    const x = inside(board, front(board)).x;
    const at = { ...drawn, x, width: units(drawn.width - board.reveal) };
    return strip(id, id, at, { kind: 'banner', notch: units(2 * board.reveal) });
  };
  const label = box(board, 9, 33, 31, 39);
  return design(board, { id: 'pennants', name: 'Three Notched Pennants' }, 'side', [
    ...mattedPanel(board),
    flag('upper', 4, 18, 12),
    flag('middle', 13, 24, 21),
    flag('lower', 22, 29, 30),
    ...greetingOn(board, label, insideLong),
  ]);
}
