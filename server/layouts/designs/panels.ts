import type { Layout } from '../layout.ts';
import {
  box,
  design,
  focal,
  front,
  greeting,
  greetingOn,
  insideLong,
  lying,
  mat,
  matted,
  mattedPanel,
  panel,
  strip,
} from './board.ts';
import type { Board } from './board.ts';

/** Two papers above and below, a line of cardstock on the seam, a square window over both. */
export function splitLow(board: Board): Layout {
  const line = box(board, 0, 27, 32, 30);
  const window = box(board, 7, 4, 25, 25);
  const label = box(board, 4, 32, 28, 39);
  return design(board, { id: 'split-low', name: 'Panel Split Low' }, 'top', [
    panel('upper', 'upper', box(board, 0, 0, 32, 28)),
    panel('lower', 'lower', box(board, 0, 28, 32, 42)),
    mat('line', line),
    ...matted(board, focal, 'window', window),
    ...greetingOn(board, label),
  ]);
}

/** Four papers as the panes of a window, with the greeting on the lower bar. */
export function fourPanes(board: Board): Layout {
  const label = box(board, 5, 33, 27, 40);
  return design(board, { id: 'four-panes', name: 'Four Panes' }, 'side', [
    mat('frame', front(board)),
    panel('upper-left', 'a', box(board, 1, 1, 15.5, 20)),
    panel('upper-right', 'b', box(board, 16.5, 1, 31, 20)),
    panel('lower-left', 'c', box(board, 1, 21, 15.5, 41)),
    panel('lower-right', 'd', box(board, 16.5, 21, 31, 41)),
    ...greetingOn(board, label),
  ]);
}

/** Frames within frames: two papers and their mats round a focal piece. */
export function framed(board: Board): Layout {
  const second = box(board, 4, 4, 28, 31);
  const third = box(board, 9, 9, 23, 26);
  const label = box(board, 3, 33, 29, 40);
  return design(board, { id: 'framed', name: 'Frame Within a Frame' }, 'top', [
    panel('outer', 'outer', front(board)),
    ...matted(board, panel, 'inner', second),
    ...matted(board, focal, 'focal', third),
    ...greetingOn(board, label),
  ]);
}

/** One paper, one mat, one greeting: the design for a print worth seeing whole. */
export function onePaper(board: Board): Layout {
  const label = box(board, 9, 28, 31, 35);
  return design(board, { id: 'one-paper', name: 'One Paper, One Greeting' }, 'top', [
    ...mattedPanel(board),
    ...greetingOn(board, label, insideLong),
  ]);
}

/** A wide card with a tall focal piece at the left third and a strip under the greeting. */
export function wideThird(upright: Board): Layout {
  const board = lying(upright);
  const tall = box(board, 4, 3, 18, 29);
  return design(board, { id: 'wide-third', name: 'Focal at the Left Third' }, 'tent', [
    panel('panel', 'field', front(board)),
    strip('strip', 'band', box(board, 0, 18, 42, 26)),
    ...matted(board, focal, 'focal', tall),
    greeting(box(board, 18, 19.5, 38, 24.5)),
  ]);
}

/** Two flaps that meet in the middle; the tag is glued to the left flap only and latches them. */
export function gate(upright: Board): Layout {
  const board = lying(upright);
  const tag = box(board, 11, 7, 31, 25);
  return design(board, { id: 'gate', name: 'Gate With a Latch Tag' }, 'gate', [
    panel('left-flap', 'flaps', box(board, 0, 0, 20.5, 32)),
    panel('right-flap', 'flaps', box(board, 21.5, 0, 42, 32)),
    strip('left-hem', 'hem', box(board, 0, 23, 20.5, 29)),
    strip('right-hem', 'hem', box(board, 21.5, 23, 42, 29)),
    ...matted(board, focal, 'tag', tag),
    greeting(insideLong(board, box(board, 14, 12, 28, 20))),
  ]);
}
