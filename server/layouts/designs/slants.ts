import { units } from '../../lengths/length.ts';
import type { Length } from '../../lengths/length.ts';
import type { Box, Layout, Shape } from '../layout.ts';
import {
  box,
  design,
  focal,
  front,
  greetingOn,
  inside,
  insideLong,
  mat,
  matted,
  mattedPanel,
  panel,
  strip,
} from './board.ts';
import type { Board } from './board.ts';
import { corners, triangle } from './shapes.ts';

/** A band that climbs from left to right over the panel, on its mat. */
export function slantedBand(board: Board): Layout {
  const outer = box(board, 0, 9, 32, 29);
  const rise = units(box(board, 0, 0, 32, 8).height);
  const inner: Box = {
    ...outer,
    y: units(outer.y + board.reveal),
    height: units(outer.height - 2 * board.reveal),
  };
  const label = box(board, 12, 32, 32, 39);
  return design(board, { id: 'slanted-band', name: 'Band on a Slant' }, 'side', [
    panel('panel', 'field', front(board)),
    mat('band-mat', outer, climbing(outer, rise)),
    strip('band', 'band', inner, climbing(inner, rise)),
    ...greetingOn(board, label, insideLong),
  ]);
}

/** The panel parted by a slanted line; both parts lie on one mat that shows between them. */
export function slantedSeam(board: Board): Layout {
  const rise = box(board, 0, 0, 32, 9).height;
  const upper = box(board, 1, 1, 31, 28);
  const lower: Box = {
    ...upper,
    y: units(upper.y + upper.height - rise + board.reveal),
    height: units(box(board, 0, 0, 32, 41).height - upper.height + rise - 2 * board.reveal),
  };
  const window = box(board, 4, 5, 17, 20);
  const label = box(board, 8, 33, 28, 39);
  return design(board, { id: 'slanted-seam', name: 'Panel Parted on a Slant' }, 'top', [
    mat('panel-mat', front(board)),
    panel('upper', 'upper', upper, {
      kind: 'corners',
      points: corners(
        [0, 0],
        [upper.width, 0],
        [upper.width, upper.height - rise],
        [0, upper.height],
      ),
    }),
    panel('lower', 'lower', lower, {
      kind: 'corners',
      points: corners([0, rise], [lower.width, 0], [lower.width, lower.height], [0, lower.height]),
    }),
    ...matted(board, focal, 'window', window),
    ...greetingOn(board, label),
  ]);
}

/** The panel cut from corner to corner into two papers, with a round focal piece over the cut. */
export function halved(board: Board): Layout {
  const whole = front(board);
  const disc = box(board, 7, 10, 25, 28);
  const round = { ...disc, height: disc.width };
  const label = box(board, 3, 33, 29, 39);
  return design(board, { id: 'halved', name: 'Halved From Corner to Corner' }, 'side', [
    panel('upper', 'upper', whole, triangle(whole, 'upper left')),
    panel('lower', 'lower', whole, triangle(whole, 'lower right')),
    ...matted(board, focal, 'disc', round, { shape: { kind: 'circle' } }),
    ...greetingOn(board, label, insideLong),
  ]);
}

/** Two corners of the panel turned over in another paper: both triangles come from one rectangle. */
export function turnedCorners(board: Board): Layout {
  const whole = inside(board, front(board));
  const first: Box = { ...box(board, 0, 0, 16, 16), x: whole.x, y: whole.y };
  const second: Box = {
    ...first,
    x: units(whole.x + whole.width - first.width),
    y: units(whole.y + whole.height - first.height),
  };
  const label = box(board, 5, 16, 27, 26);
  return design(board, { id: 'turned-corners', name: 'Two Corners Turned' }, 'top', [
    ...mattedPanel(board),
    panel('first-corner', 'corner', first, triangle(first, 'upper left')),
    panel('second-corner', 'corner', second, triangle(second, 'lower right')),
    ...greetingOn(board, label),
  ]);
}

function climbing({ width, height }: Box, rise: Length): Shape {
  return {
    kind: 'corners',
    points: corners([0, rise], [width, 0], [width, height - rise], [0, height]),
  };
}
