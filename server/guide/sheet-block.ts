import { squareCornerOf } from '../cutting/pairs.ts';
import type { Slot } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Extent, Mark } from './drawing.ts';
import type { Way } from './fewest-pages.ts';
import { under } from './flow.ts';
import { PAGE, paragraph, ruleAcross } from './page.ts';
import { columnOf, inTwoColumns } from './step-columns.ts';
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

/** The sizes of picture that a page offers, the largest first, in mm; the smaller ones serve sheets of few cuts. */
export interface SheetPlace {
  /** The largest picture. */
  readonly picture: Extent;
  /** The height of a page. */
  readonly room: number;
}

/** Parts of the largest picture, and for how many steps at most it may be so small. */
const PARTS = [
  { part: 1, steps: Infinity },
  { part: 0.94, steps: Infinity },
  { part: 0.88, steps: Infinity },
  { part: 0.82, steps: Infinity },
  { part: 0.76, steps: Infinity },
  { part: 0.68, steps: 12 },
  { part: 0.61, steps: 12 },
  { part: 0.54, steps: 10 },
  { part: 0.48, steps: 6 },
  { part: 0.41, steps: 2 },
] as const;

/** From this part on a picture is large, so that its numbers may hide more of a narrow piece. */
const LARGE = 0.76;

/**
 * All ways to set a sheet with its cuts: the larger its picture, the better. Where the words find no room beside the
 * picture, they go on in two columns across the page under it: no step stands left of an earlier one beside the picture.
 * Of a sheet that is too long for a page, the parts one after the other, each in its one way.
 */
export function sheetWays(ask: SheetAsk, place: SheetPlace): Way[][] {
  const legible = PARTS.filter(({ part, steps }) => {
    const least = part >= LARGE ? TIGHT : LEGIBLE;
    return ask.steps.length <= steps && ask.smallest * scaleOf(ask, place, part) >= least;
  });
  const parts = legible.length === 0 ? [PARTS[0]] : legible;
  const ways = parts.flatMap(({ part }): Way[] => {
    const { height, left, draw } = layIn(ask, scaleOf(ask, place, part), place.room);
    const fits = left.length === 0 && height <= place.room;
    return fits ? [{ height, draw, worth: Math.sqrt(part) }] : [];
  });
  return ways.length > 0 ? [ways] : inParts(ask, place).map((way) => [way]);
}

/** Overleaf it is said whose steps they are; several have the picture again. */
function inParts(ask: SheetAsk, place: SheetPlace): Way[] {
  const title = `${ask.title.split('. ')[0]!.replace(/, continued$/, '')}, continued`;
  if (ask.steps.length < SEVERAL) {
    const head = paragraph(ask.title, 0, 0, PAGE.width, { bold: true });
    const { marks, height } = under(head, columnOf(ask.steps, PAGE.width, Infinity), HEAD);
    return [{ height, worth: 0, draw: () => marks }];
  }
  const { left, height, draw } = layIn(ask, scaleOf(ask, place, 1), place.room);
  const first = { height, draw, worth: 0 };
  return left.length === 0 ? [first] : [first, ...inParts({ ...ask, title, steps: left }, place)];
}

const SEVERAL = 4;

function scaleOf({ sheet }: SheetAsk, { picture }: SheetPlace, part: number): number {
  return part * Math.min(picture.width / sheet.width, picture.height / sheet.height);
}

interface LaidIn extends Omit<Way, 'worth'> {
  /** The steps that find no room. */
  readonly left: readonly StepWords[];
}

/** The picture with the steps beside it and under it. */
function layIn(ask: SheetAsk, scale: number, room: number): LaidIn {
  const picture = { width: scale * ask.sheet.width, height: scale * ask.sheet.height };
  const head = paragraph(ask.title, 0, 0, PAGE.width, { bold: true });
  const top = head.height + HEAD;
  const x = picture.width + GAP;
  const width = PAGE.width - x;
  const all = columnOf(ask.steps, width, Math.min(room - top, picture.height + OVER));
  const beside = all.count === ask.steps.length ? all : columnOf(ask.steps, width, picture.height);
  const high = Math.max(picture.height + 1, beside.height);
  const low = top + high + APART;
  const rest = inTwoColumns(ask.steps.slice(beside.count), room - low);
  const words: Mark[] = [{ kind: 'group', x, y: top, marks: beside.marks }];
  if (rest.count > 0)
    words.push(ruleAcross(0, low - APART / 2, PAGE.width), {
      kind: 'group',
      x: 0,
      y: low,
      marks: rest.marks,
    });
  return {
    height: rest.count === 0 ? top + high : low + rest.height,
    left: ask.steps.slice(beside.count + rest.count),
    draw: () => [
      ...head.marks,
      // Marks on the edge of the sheet reach over it.
      { kind: 'group', x: 1.2, y: top, marks: ask.draw(scale) },
      ...words,
    ],
  };
}

/** Between the head of a sheet and its picture. */
const HEAD = 2.5;
/** How far the last steps may reach below the picture before all of them go on under it, in mm. */
const OVER = 16;
/** Between the picture and the steps under it. */
const APART = 5;

/** A piece drawn narrower than this (mm) has no room for its number; than that, its number hides it. */
const LEGIBLE = 4.4;
const TIGHT = 3.8;

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
