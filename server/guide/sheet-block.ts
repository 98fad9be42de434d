import type { Slot } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Extent, Mark } from './drawing.ts';
import { SIZES, SOFT } from './look.ts';
import { PAGE, paragraph } from './page.ts';
import type { Block } from './page.ts';
import { stepBlock } from './step-block.ts';
import type { StepWords } from './step-words.ts';

export interface SheetAsk {
  /** What lies how, set bold over the picture. */
  readonly title: string;
  /** The sheet with its cuts, drawn from 0, 0 with so many printed mm for a mm of the sheet. */
  readonly draw: (scale: number) => Mark[];
  /** Size of the sheet in mm. */
  readonly sheet: Extent;
  readonly steps: readonly StepWords[];
  /** What stands in small letters under the picture. */
  readonly under?: string;
  /** The short side of the smallest piece, in mm of the sheet. */
  readonly smallest: number;
}

const GAP = 6;

/** The largest picture and the height of the place, in mm, for sheets of at most so many steps. */
export interface SheetPlace {
  readonly steps: number;
  readonly picture: Extent;
  readonly room: number;
}

/**
 * A sheet's picture with its cuts beside it, in the first place that takes it. What finds no room beside the
 * picture goes on under it, so that no step stands on a page of its own while there is room; what
 * is too long even for the last place goes on in further blocks.
 */
export function sheetBlocks(ask: SheetAsk, places: readonly SheetPlace[]): Block[] {
  let laid = layIn(ask, places[0]!);
  for (const place of places) {
    laid = layIn(ask, place);
    const legible = ask.smallest * laid.scale >= LEGIBLE || place.steps === Infinity;
    if (laid.left.length === 0 && ask.steps.length <= place.steps && legible) break;
  }
  return [laid.block, ...laid.left.map((step) => stepBlock(step, PAGE.width))];
}

function layIn(
  ask: SheetAsk,
  { picture: most, room }: SheetPlace,
): { block: Block; scale: number; left: readonly StepWords[] } {
  const scale = Math.min(most.width / ask.sheet.width, most.height / ask.sheet.height);
  const picture = { width: scale * ask.sheet.width, height: scale * ask.sheet.height };
  const head = paragraph(ask.title, 0, 0, PAGE.width, { bold: true });
  const top = head.height + 2.5;
  const x = Math.max(picture.width, NARROWEST) + GAP;
  const beside = column(ask.steps, PAGE.width - x, room - top);
  const under = paragraph(ask.under ?? '', 0, 0, x - GAP, { size: SIZES.small, colour: SOFT });
  const low = top + picture.height + 1.5;
  const lower = low + under.height + 1.5;
  const after = ask.steps.slice(beside.count);
  const rest = column(after, x - GAP, room - lower);
  const end = rest.count === 0 ? low + under.height : lower + rest.height;
  return {
    scale,
    left: after.slice(rest.count),
    block: {
      marks: [
        ...head.marks,
        // Marks on the edge of the sheet reach over it.
        { kind: 'group', x: 1.2, y: top, marks: ask.draw(scale) },
        { kind: 'group', x, y: top, marks: beside.marks },
        { kind: 'group', x: 0, y: low, marks: under.marks },
        { kind: 'group', x: 0, y: lower, marks: rest.marks },
      ],
      height: Math.max(top + beside.height, end),
    },
  };
}

/** A piece drawn narrower than this (mm) has no room for its label. */
const LEGIBLE = 5.2;

/** Words under a small picture may be a little wider than it. */
const NARROWEST = 58;

/** The short side of a sheet's smallest piece, in mm. */
export function smallestOf({ pieces }: Slot): number {
  return Math.min(
    ...pieces.map(({ piece }) =>
      toMillimetres(piece.size.width < piece.size.height ? piece.size.width : piece.size.height),
    ),
  );
}

interface Column {
  readonly marks: Mark[];
  readonly height: number;
  /** How many steps found room. */
  readonly count: number;
}

function column(steps: readonly StepWords[], width: number, room: number): Column {
  const marks: Mark[] = [];
  let y = 0;
  let count = 0;
  for (const step of steps) {
    const block = stepBlock(step, width);
    if (y + block.height > room) break;
    marks.push({ kind: 'group', x: 0, y, marks: block.marks });
    y += block.height;
    count += 1;
  }
  return { marks, height: y, count };
}
