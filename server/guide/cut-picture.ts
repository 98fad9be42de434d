import type { CutStep } from '../cutting/cut-steps.ts';
import type { Slot } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Size } from '../lengths/length.ts';
import { cutLines } from './cut-lines.ts';
import type { CutLine } from './cut-lines.ts';
import { RADIUS, numberSpots, taken } from './cut-numbers.ts';
import type { Mark, Spot } from './drawing.ts';
import { disc, rectangle } from './drawing.ts';
import { finishLines } from './finish-lines.ts';
import type { FinishLine } from './finish-lines.ts';
import { hatch } from './hatch.ts';
import { laidPiece } from './laid.ts';
import type { Lying } from './laid.ts';
import { CUT, INK, PAPER } from './look.ts';
import { badge } from './page.ts';
import { scoreLines } from './score-lines.ts';
import { pieceLabels } from './piece-label.ts';
import { dashesOf } from './track.ts';

export interface CutPictureAsk extends Lying {
  readonly slot: Slot;
  readonly sheet: Size;
  readonly steps: readonly CutStep[];
  /** Printed mm for a mm of the sheet. */
  readonly scale: number;
  /** What the sheet looks like, in its own mm. */
  readonly face: readonly Mark[];
}

/** A sheet with its numbered cuts, what is left over hatched, and every piece labelled. From 0, 0. */
export function cutPicture(ask: CutPictureAsk): Mark[] {
  const { sheet, scale } = ask;
  const { lines, rests } = cutLines(ask.steps, sheet);
  const whole = rectangle(0, 0, toMillimetres(sheet.width), toMillimetres(sheet.height));
  const finishes = finishLines(ask.steps, ask.slot, ask);
  const spots = numberSpots(lines, finishes, scale, sheet);
  const numbered = [
    ...lines.map(({ number }, at) => ({ number, spot: spots.cuts[at]! })),
    ...finishes.map(({ number }, at) => ({ number, spot: spots.finishes[at]! })),
  ];
  const labelled = ask.slot.pieces.map((placed) => laidPiece(placed, ask));
  const ground: Mark = {
    kind: 'group',
    x: 0,
    y: 0,
    scale,
    clip: whole,
    marks: [
      ...ask.face,
      { kind: 'area', corners: whole, fill: PAPER, opacity: 0.25 },
      ...rests.flatMap((rest): Mark[] => [
        { kind: 'area', corners: rest, fill: PAPER, opacity: 0.82 },
        ...hatch(rest, 2.2 / scale, 45, { width: 0.3 / scale, colour: '#7a8184' }),
      ]),
    ],
  };
  return [
    ground,
    { kind: 'area', corners: scaled(whole, scale), edge: { width: 0.5, colour: INK } },
    ...finishes.flatMap((line) => drawnFinish(line, scale)),
    ...labelled.flatMap(({ placed, fold }) => scoreLines(placed, fold ?? null, scale)),
    ...lines.flatMap((line) => drawnCut(line, scale)),
    ...finishes.flatMap(({ marks }) => scaled(marks, scale).map(pencilMark)),
    ...pieceLabels(
      labelled,
      scale,
      numbered.map(({ spot }) => taken(spot)),
    ),
    ...numbered.flatMap(({ number, spot }) => badge(String(number), spot.x, spot.y, RADIUS, CUT)),
  ];
}

function scaled(corners: readonly Spot[], by: number): Spot[] {
  return corners.map(({ x, y }) => ({ x: x * by, y: y * by }));
}

function drawnCut({ from, to }: CutLine, scale: number): Mark[] {
  const [a, b] = scaled([from, to], scale) as [Spot, Spot];
  return [
    { kind: 'line', from: a, to: b, width: 1.3, colour: PAPER },
    { kind: 'line', from: a, to: b, width: 0.55, colour: CUT },
  ];
}

/** What is cut last, once the piece lies loose, is dashed. */
function drawnFinish({ tracks }: FinishLine, scale: number): Mark[] {
  const lines = tracks.flatMap((track) => dashesOf(scaled(track, scale), 2, 1.2));
  return [
    ...lines.map((line): Mark => ({ kind: 'line', ...line, width: 1.2, colour: PAPER })),
    ...lines.map((line): Mark => ({ kind: 'line', ...line, width: 0.5, colour: CUT })),
  ];
}

function pencilMark({ x, y }: Spot): Mark {
  const edge = { width: 0.45, colour: CUT };
  return { kind: 'area', corners: disc(x, y, PENCIL), fill: PAPER, edge };
}

/** Radius of a pencil mark in mm of the page. */
const PENCIL = 0.9;
