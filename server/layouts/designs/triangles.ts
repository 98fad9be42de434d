import { units } from '../../lengths/length.ts';
import { snap } from '../../lengths/ruler.ts';
import type { Box, Layer, Layout } from '../layout.ts';
import {
  box,
  design,
  front,
  greetingOn,
  inside,
  insideLong,
  mat,
  mattedPanel,
  panel,
  strip,
} from './board.ts';
import type { Board } from './board.ts';
import { triangle } from './shapes.ts';
import type { SquareCorner } from './shapes.ts';

/** Designs whose triangles come out of rectangles in pairs: two of one paper are one rectangle, cut apart. */

/** All four corners of a panel in one paper: two rectangles give them. */
export function fourCorners(upright: Board): Layout {
  const whole = inside(upright, front(upright));
  const size = box(upright, 0, 0, 10, 10).width;
  const right = units(whole.x + whole.width - size);
  const low = units(whole.y + whole.height - size);
  const at = (x: typeof right, y: typeof right): Box => ({ x, y, width: size, height: size });
  const label = box(upright, 4, 17, 28, 25);
  return design(upright, { id: 'four-corners', name: 'Four Corners of One Paper' }, 'side', [
    ...mattedPanel(upright),
    corner('upper-left', 'corners', at(whole.x, whole.y), 'upper left'),
    corner('upper-right', 'corners', at(right, whole.y), 'upper right'),
    corner('lower-right', 'corners', at(right, low), 'lower right'),
    corner('lower-left', 'corners', at(whole.x, low), 'lower left'),
    ...greetingOn(upright, label),
  ]);
}

/** Six tiles on a mat, each of two triangles; the two papers change places from tile to tile. */
export function sixTiles(board: Board): Layout {
  const ground = box(board, 0, 3, 32, 24);
  const width = box(board, 0, 0, 9, 0).width;
  const height = box(board, 0, 0, 0, 9).height;
  const gap = units(board.reveal);
  const left = units(ground.x + (ground.width - 3 * width - 2 * gap) / 2);
  const top = units(ground.y + (ground.height - 2 * height - gap) / 2);
  const tiles = [0, 1].flatMap((row) => [0, 1, 2].map((column) => ({ row, column })));
  const label = box(board, 5, 29, 27, 36);
  return design(board, { id: 'six-tiles', name: 'Six Tiles Cut Slantwise' }, 'top', [
    panel('panel', 'field', front(board)),
    mat('tile-mat', ground),
    ...tiles.flatMap(({ row, column }) => {
      const at = onMarks(board, {
        x: units(left + column * (width + gap)),
        y: units(top + row * (height + gap)),
        width,
        height,
      });
      const [upper, lower] = (row + column) % 2 === 0 ? ['light', 'dark'] : ['dark', 'light'];
      const number = 3 * row + column + 1;
      return [
        corner(`${upper}-${number}`, upper, at, 'upper left'),
        corner(`${lower}-${number}`, lower, at, 'lower right'),
      ];
    }),
    ...greetingOn(board, label, insideLong),
  ]);
}

/** Half of a box: the triangle whose square corner lies there. */
function corner(id: string, paper: string, at: Box, square: SquareCorner): Layer {
  return strip(id, paper, at, triangle(at, square));
}

/** Moved to the marks of the ruler, its size kept. */
function onMarks({ ruler }: Board, { x, y, width, height }: Box): Box {
  return { x: snap(x, ruler), y: snap(y, ruler), width, height };
}
