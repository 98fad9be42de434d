import { cutSteps } from '../cutting/cut-steps.ts';
import { worthKeeping } from '../cutting/leftovers.ts';
import { squareCornerOf } from '../cutting/pairs.ts';
import type { Slot } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Ruler, Size } from '../lengths/length.ts';
import type { Extent, Mark } from './drawing.ts';
import type { Lying } from './laid.ts';
import { timesSaid } from './left-blocks.ts';
import { pieceSaid, sizeSaid } from './said.ts';
import { shownSteps } from './shown-steps.ts';
import type { ShownStep } from './shown-steps.ts';
import { svgOf } from './svg.ts';

/** A sheet for a screen at the table: its steps, its pieces, and what is left of it. */
export interface SheetOnScreen {
  readonly drawing: Extent;
  readonly steps: ShownStep[];
  readonly pieces: PieceOnScreen[];
  /** Sizes of what is left and worth keeping, the largest first. */
  readonly left: string[];
}

export interface PieceOnScreen {
  readonly card: number;
  readonly layer: string;
  readonly name: string;
  readonly size: string;
  /** A triangle that is half of the rectangle around it, which another may share. */
  readonly half: boolean;
  /** Whether it shows the side that lies up while it is cut. */
  readonly up: boolean;
}

export interface SheetToShow extends Lying {
  /** The sheet whose pieces are named. */
  readonly slot: Slot;
  /** All sheets that are cut with it; it among them. */
  readonly together: readonly Slot[];
  readonly size: Size;
  /** Width of the drawn sheet, at which numbers and labels have their right size. */
  readonly width: number;
}

/** Room around the drawn sheet for its edge and for numbers on it. */
const ROOM = 3;

export function sheetOnScreen(
  { slot, together, size, width, ...lying }: SheetToShow,
  ruler: Ruler,
): SheetOnScreen {
  const drawn = { scale: scaleOf(size, width), room: ROOM, ...lying };
  return {
    drawing: drawingOf(size, width),
    steps: shownSteps(cutSteps(slot), slot, size, drawn, ruler),
    pieces: piecesOn(slot, ruler, lying.showsOther),
    left: timesSaid(together.flatMap(worthKeeping).map((left) => sizeSaid(left, ruler))),
  };
}

/** A drawn sheet as an SVG; `marks` draws it from 0, 0 at a scale. */
export function sheetDrawing(
  size: Size,
  width: number,
  marks: (scale: number) => Mark[],
  name: string,
): string {
  return svgOf(marks(scaleOf(size, width)), drawingOf(size, width), { x: -ROOM, y: -ROOM }, name);
}

function scaleOf(size: Size, width: number): number {
  return width / toMillimetres(size.width);
}

function drawingOf(size: Size, width: number): Extent {
  const height = scaleOf(size, width) * toMillimetres(size.height);
  return { width: width + 2 * ROOM, height: height + 2 * ROOM };
}

/** The pieces of a sheet, by card. */
function piecesOn(
  { pieces }: Slot,
  ruler: Ruler,
  showsOther: Lying['showsOther'],
): PieceOnScreen[] {
  return pieces
    .map((placed) => {
      const { piece } = placed;
      return {
        card: piece.card,
        layer: piece.layer,
        name: pieceSaid(piece),
        size: sizeSaid(piece.size, ruler),
        half: squareCornerOf(piece) !== null,
        up: !showsOther(placed),
      };
    })
    .sort((a, b) => a.card - b.card);
}
