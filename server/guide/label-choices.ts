import type { Mark, Spot } from './drawing.ts';
import { rectangle } from './drawing.ts';
import type { LaidPiece } from './laid.ts';
import { widthOf } from './letters.ts';
import { HAIR, INK, PAPER, SIZES } from './look.ts';
import { upArrow } from './page.ts';
import { pieceSaid } from './said.ts';

/** A label as it may be set, along its own line; all in mm of the page. */
export interface LabelChoice {
  /** Size of the letters of the card's number. */
  readonly number: number;
  /** The words after the number; '' for none. */
  readonly text: string;
  /** Room of the arrow, 0 where there is none. */
  readonly arrow: number;
  /** Whether the arrow stands under the number. */
  readonly under: boolean;
  readonly width: number;
  readonly height: number;
}

/**
 * The label with its words, then with less, then smaller: down to the smallest letters that are printed.
 *
 * Takes  the piece and its shorter side as drawn, in mm.
 */
export function labelChoices(
  { placed, turn, showsOther }: LaidPiece,
  short: number,
): LabelChoice[] {
  const { card } = placed.piece;
  const name = pieceSaid(placed.piece);
  const texts = showsOther ? [`${name}, other side`, 'other side'] : [name];
  const large = Math.max(SIZES.small, Math.min(SIZES.large, short * 0.62));
  const middle = (large + SIZES.small) / 2;
  const sizes = [...new Set([large, middle, SIZES.small])];
  const arrowed = turn !== null;
  return [
    ...texts.map((text) => inRow(card, text, large, arrowed)),
    ...sizes.flatMap((number) => [
      inRow(card, '', number, arrowed),
      ...(arrowed ? [underEachOther(card, number)] : []),
    ]),
    tight(card, arrowed),
  ];
}

function inRow(card: number, text: string, number: number, arrowed: boolean): LabelChoice {
  const arrow = arrowed ? number * 0.9 : 0;
  const words = text === '' ? 0 : widthOf(text, SIZES.small) + 1;
  const width = widthOf(String(card), number, true) + words + (arrowed ? arrow + 0.8 : 0) + 2.2;
  return { number, text, arrow, under: false, width, height: number * 1.25 };
}

function underEachOther(card: number, number: number): LabelChoice {
  const arrow = number * 0.9;
  const width = Math.max(widthOf(String(card), number, true), arrow) + 1.4;
  return { number, text: '', arrow, under: true, width, height: number * 0.67 + arrow + 2 };
}

/** In a narrow strip the paper around the letters is less. */
function tight(card: number, arrowed: boolean): LabelChoice {
  const row = inRow(card, '', SIZES.small, arrowed);
  return { ...row, height: SIZES.small * 0.95 };
}

/** A label drawn around its middle; a tall one reads upwards. */
export function labelMarks(
  { x, y }: Spot,
  { number, text, arrow, under, width, height }: LabelChoice,
  { placed, turn, showsOther }: LaidPiece,
  tall: boolean,
): Mark {
  const [left, top] = [-width / 2, -height / 2];
  const card = String(placed.piece.card);
  const marks: Mark[] = [
    {
      kind: 'area',
      corners: rectangle(left, top, width, height),
      fill: PAPER,
      opacity: 0.92,
      edge: { width: 0.2, colour: HAIR },
    },
    {
      kind: 'words',
      x: under ? 0 : left + 1.1,
      y: under ? top + 0.6 + number * 0.67 : number * 0.34,
      text: card,
      size: number,
      bold: true,
      ...(under ? { align: 'middle' as const } : {}),
    },
  ];
  if (text !== '')
    marks.push({
      kind: 'words',
      x: left + 2.1 + widthOf(card, number, true),
      y: SIZES.small * 0.32,
      text,
      size: SIZES.small,
    });
  if (turn !== null)
    marks.push({
      kind: 'group',
      x: under ? 0 : left + width - 0.9 - arrow / 2,
      y: under ? top + height - 0.6 - arrow / 2 : 0,
      // Seen through the sheet, a quarter turn goes the other way round.
      turned: (tall ? 90 : 0) - (showsOther ? -turn : turn),
      marks: [{ kind: 'area', corners: upArrow(0, 0, number * 0.95), fill: INK }],
    });
  return { kind: 'group', x, y, turned: tall ? -90 : 0, marks };
}
