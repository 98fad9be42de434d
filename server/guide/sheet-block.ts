import { squareCornerOf } from '../cutting/pairs.ts';
import type { Slot } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Extent, Mark } from './drawing.ts';
import { INK, SIZES } from './look.ts';
import { PAGE, paragraph, ruleAcross } from './page.ts';
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
  /** What `smallestOf` says of the sheet. */
  readonly smallest: number;
}

const GAP = 6;

/** The largest picture and the height of the place, in mm, for sheets of at most so many steps. */
export interface SheetPlace {
  readonly steps: number;
  readonly picture: Extent;
  readonly room: number;
  /** The least width in mm at which a piece may be drawn; `LEGIBLE` when left out. */
  readonly least?: number;
}

/**
 * A page to itself: the picture as large as it may be with all steps beside and under it, down to three quarters;
 * where even that has no room for them, large again, and the steps go on overleaf.
 */
export function wholePage(width: number, height: number, room: number): SheetPlace[] {
  return [1, 0.94, 0.88, 0.82, 0.76, 1].map((part) => ({
    steps: Infinity,
    picture: { width: part * width, height: part * height },
    room,
    least: TIGHT,
  }));
}

/**
 * A sheet's picture with its cuts beside it, in the first place that takes it. What finds no room beside the
 * picture goes on under it, so that no step stands on a page of its own while there is room; what
 * is too long even for the last place goes on in further blocks.
 */
export function sheetBlocks(ask: SheetAsk, places: readonly SheetPlace[]): Block[] {
  let place = places[0]!;
  let laid = layIn(ask, place);
  for (place of places) {
    laid = layIn(ask, place);
    const legible = ask.smallest * laid.scale >= (place.least ?? LEGIBLE);
    const fits = laid.left.length === 0 && laid.block.height <= place.room;
    if (fits && ask.steps.length <= place.steps && legible) break;
  }
  return [laid.block, ...restBlocks(ask, laid.left, place)];
}

/** Steps overleaf say whose they are; several have the picture again. */
function restBlocks(ask: SheetAsk, steps: readonly StepWords[], place: SheetPlace): Block[] {
  if (steps.length === 0) return [];
  const title = `${ask.title.split('. ')[0]}, continued`;
  if (steps.length >= SEVERAL) {
    const { block, left } = layIn({ ...ask, title, steps }, place);
    return [block, ...restBlocks(ask, left, place)];
  }
  const head = paragraph(title, 0, 0, PAGE.width, { bold: true });
  const top = head.height + 2.5;
  const { marks, height, count } = column(steps, PAGE.width, REST);
  const block = {
    marks: [...head.marks, { kind: 'group', x: 0, y: top, marks } as const],
    height: top + height,
  };
  return [block, ...restBlocks(ask, steps.slice(count), place)];
}

const SEVERAL = 4;
/** Steps without their picture stand in blocks of at most this height (mm), which find room on most pages. */
const REST = 90;

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
  const low = top + picture.height + 3 + ONWARD;
  const after = ask.steps.slice(beside.count);
  const rest = column(after, x - GAP, room - low);
  const end = rest.count === 0 ? top + picture.height : low + rest.height;
  return {
    scale,
    left: after.slice(rest.count),
    block: {
      marks: [
        ...head.marks,
        // Marks on the edge of the sheet reach over it.
        { kind: 'group', x: 1.2, y: top, marks: ask.draw(scale) },
        { kind: 'group', x, y: top, marks: beside.marks },
        ...(rest.count === 0 ? [] : goOn(ask.steps[beside.count - 1], low, x - GAP)),
        { kind: 'group', x: 0, y: low, marks: rest.marks },
      ],
      height: Math.max(top + beside.height, end),
    },
  };
}

/** Height of the line that says where the steps go on, in mm. */
const ONWARD = 5.5;

/** Over the steps under the picture: they come after those beside it, though they stand to the left. */
function goOn(last: StepWords | undefined, y: number, width: number): Mark[] {
  if (last === undefined) return [];
  const text = `After ${last.number}, at the right, go on here:`;
  return [
    ruleAcross(0, y - ONWARD - 0.2, width, INK),
    { kind: 'words', x: 0, y: y - 1.6, text, size: SIZES.note, bold: true },
  ];
}

/** A piece drawn narrower than this (mm) has no room for its number; than that, its number hides it. */
const LEGIBLE = 4.4;
const TIGHT = 3.8;

/** Words under a small picture may be a little wider than it. */
const NARROWEST = 58;

/** How much of a piece's longer side the height of its label may be: number and arrow stand in a row. */
const SLIM = 0.45;

/** The room for a label, in mm of the sheet, where there is least: of a triangle that of its corner. */
export function smallestOf({ pieces }: Slot): number {
  const rooms = pieces.map(({ piece }) => {
    const { size } = piece;
    const [width, height] = [toMillimetres(size.width), toMillimetres(size.height)];
    const room = Math.min(width, height, SLIM * Math.max(width, height));
    return squareCornerOf(piece) === null ? room : room / 2;
  });
  return Math.min(...rooms);
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
