import { INCH, MILLIMETRE, units } from '../../lengths/length.ts';
import type { Length, Ruler, Size } from '../../lengths/length.ts';
import { snap } from '../../lengths/ruler.ts';
import { foldOf } from '../folds.ts';
import type { Box, Element, Fold, Layer, Layout, Material, Role, Shape } from '../layout.ts';

/**
 * A card front to draw a design on, in any size.
 *
 * A design is drawn on a grid of 32 columns and 42 rows inside a reveal all round: on the US card
 * (4 1/4 x 5 1/2 in) a step is exactly 1/8 in; on others the lines are scaled and moved to the
 * nearest whole mm, while every reveal stays 3 mm.
 *
 *      ┌──────────────────┐
 *      │ reveal           │
 *      │  0,0 ┌────────┐  │
 *      │      │ front  │  │
 *      │      └────────┘ 32,42
 *      └──────────────────┘
 */
export interface Board {
  /** Ends the id of the layout: `us`, `a6`, `square`. */
  readonly suffix: string;
  /** Said after its name when it is not the US card. */
  readonly said: string;
  readonly ruler: Ruler;
  readonly card: Size;
  readonly reveal: Length;
  /** Grid steps across and down. */
  readonly columns: number;
  readonly rows: number;
}

const inches = (count: number): Length => units(count * INCH);
const millimetres = (count: number): Length => units(count * MILLIMETRE);

const IN = { ruler: 'in', reveal: inches(1 / 8) } as const;
const MM = { ruler: 'mm', reveal: millimetres(3) } as const;

/** 4 1/4 x 5 1/2 in: a quarter of a US letter sheet. */
export const US: Board = {
  ...IN,
  suffix: 'us',
  said: '4 1/4 x 5 1/2 in',
  card: { width: inches(4.25), height: inches(5.5) },
  columns: 32,
  rows: 42,
};
/** A6, 105 x 148 mm (ISO 216). */
export const A6: Board = {
  ...MM,
  suffix: 'a6',
  said: 'A6',
  card: { width: millimetres(105), height: millimetres(148) },
  columns: 32,
  rows: 42,
};
/** 13 x 13 cm. */
export const SQUARE: Board = {
  ...MM,
  suffix: 'square',
  said: '13 x 13 cm',
  card: { width: millimetres(130), height: millimetres(130) },
  columns: 32,
  rows: 42,
};

/** The same card lying on its long side; its grid is 42 columns by 32 rows. */
export function lying(board: Board): Board {
  const { width, height } = board.card;
  return { ...board, card: { width: height, height: width }, columns: 42, rows: 32 };
}

/** A box between two grid points. */
export function box(board: Board, x0: number, y0: number, x1: number, y1: number): Box {
  const x = across(board, x0);
  const y = down(board, y0);
  return { x, y, width: less(across(board, x1), x), height: less(down(board, y1), y) };
}

/** The box between the reveals: 0, 0 to the last column and row. */
export function front(board: Board): Box {
  return box(board, 0, 0, board.columns, board.rows);
}

/** The box less a reveal on every side, as paper lies on its mat. */
export function inside(board: Board, outer: Box): Box {
  return shrunk(outer, board.reveal, board.reveal);
}

/** A strip on its mat: a reveal above and below only, the ends flush. */
export function insideLong(board: Board, outer: Box): Box {
  return shrunk(outer, units(0), board.reveal);
}

/** A standing strip on its mat: a reveal left and right only, the ends flush. */
export function insideTall(board: Board, outer: Box): Box {
  return shrunk(outer, board.reveal, units(0));
}

function shrunk({ x, y, width, height }: Box, aside: Length, above: Length): Box {
  return {
    x: units(x + aside),
    y: units(y + above),
    width: units(width - 2 * aside),
    height: units(height - 2 * above),
  };
}

function across({ card, ruler, reveal, columns }: Board, column: number): Length {
  return units(
    reveal + snap(units(Math.round((column * (card.width - 2 * reveal)) / columns)), ruler),
  );
}

function down({ card, ruler, reveal, rows }: Board, row: number): Length {
  return units(reveal + snap(units(Math.round((row * (card.height - 2 * reveal)) / rows)), ruler));
}

function less(a: Length, b: Length): Length {
  return units(a - b);
}

const RECTANGLE: Shape = { kind: 'rectangle' };

function layer(
  id: string,
  role: Role,
  material: Material,
  paper: string,
  at: Box,
  shape = RECTANGLE,
): Layer {
  return { id, role, material, paper, box: at, shape };
}

/** Patterned paper of group `paper`. */
export function panel(id: string, paper: string, at: Box, shape?: Shape): Layer {
  return layer(id, 'panel', 'patterned', paper, at, shape);
}

/** A strip of patterned paper. */
export function strip(id: string, paper: string, at: Box, shape?: Shape): Layer {
  return layer(id, 'strip', 'patterned', paper, at, shape);
}

/** The piece of patterned paper that the eye goes to. */
export function focal(id: string, paper: string, at: Box, shape?: Shape): Layer {
  return layer(id, 'focal', 'patterned', paper, at, shape);
}

/** Cardstock under a paper, seen by its reveal. */
export function mat(id: string, at: Box, shape?: Shape): Layer {
  return layer(id, 'mat', 'cardstock', 'mat', at, shape);
}

/** Plain cardstock to stamp a greeting on. */
export function greeting(at: Box, shape?: Shape): Layer {
  return layer('greeting', 'greeting', 'cardstock', 'greeting', at, shape);
}

/** A greeting on its mat, whose place is given. */
export function greetingOn(board: Board, at: Box, within: typeof inside = inside): Layer[] {
  return [mat('greeting-mat', at), greeting(within(board, at))];
}

/** A paper on a mat of its own, both of one shape; the mat's place is given. */
export function matted(
  board: Board,
  make: typeof panel,
  id: string,
  at: Box,
  { paper = id, shape }: { readonly paper?: string; readonly shape?: Shape } = {},
): Layer[] {
  return [mat(`${id}-mat`, at, shape), make(id, paper, inside(board, at), shape)];
}

/** A paper over the whole front on its mat. */
export function mattedPanel(board: Board): Layer[] {
  return matted(board, panel, 'panel', front(board), { paper: 'field' });
}

/** Puts a design together; its base is added underneath. `elements` are stamped or glued on. */
export function design(
  board: Board,
  words: { readonly id: string; readonly name: string },
  fold: Fold['kind'],
  layers: readonly Layer[],
  elements: readonly Element[] = [],
): Layout {
  const { card } = board;
  const whole = { x: units(0), y: units(0), ...card };
  return {
    id: `${words.id}-${board.suffix}`,
    name: board.suffix === 'us' ? words.name : `${words.name}, ${board.said}`,
    card,
    fold: foldOf(fold, card),
    layers: [layer('base', 'base', 'cardstock', 'base', whole), ...layers],
    ...(elements.length === 0 ? {} : { elements }),
  };
}
