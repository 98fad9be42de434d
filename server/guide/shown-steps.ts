import type { CutStep } from '../cutting/cut-steps.ts';
import type { FinishingStep } from '../cutting/finishing-steps.ts';
import type { Piece, Slot } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Size } from '../lengths/length.ts';
import { outline } from '../layouts/outline.ts';
import { cutLines } from './cut-lines.ts';
import type { Extent, Spot } from './drawing.ts';
import { numberSpots, taken } from './cut-numbers.ts';
import { finishLines } from './finish-lines.ts';
import { measurePlace } from './measure-place.ts';
import { laid, laidPiece } from './laid.ts';
import type { Lying, Taken } from './laid.ts';
import { labelPlaces } from './piece-label.ts';
import { placeOfMark, stepWords } from './step-words.ts';
import type { StepWords } from './step-words.ts';
import type { Ruler } from '../lengths/length.ts';

/** Where a step is on the drawing of its sheet; a finish also on its piece alone, in mm. */
export type Shown =
  | {
      readonly kind: 'cut';
      readonly part: Taken;
      readonly from: Spot;
      readonly to: Spot;
      /** The middle of its number on the drawing. */
      readonly badge: Spot;
      /** The part of its length, from the upper or left end, at which its measure hides least. */
      readonly measure: number;
    }
  | {
      readonly kind: 'finish';
      readonly part: Taken;
      readonly piece: Extent;
      readonly kept: Spot[];
      readonly marks: Spot[];
      /** The middle of its number, and what is cut, on the drawing of the sheet. */
      readonly badge: Spot;
      readonly tracks: Spot[][];
    };

export interface ShownStep extends StepWords {
  readonly shown: Shown;
}

/** How a sheet is drawn: so many units of the drawing for a mm, and the room around it. */
export interface Drawn extends Lying {
  readonly scale: number;
  readonly room: number;
}

/** The steps of a sheet in words, each with its place on the drawing of the sheet. */
export function shownSteps(
  steps: readonly CutStep[],
  slot: Slot,
  sheet: Size,
  drawn: Drawn,
  ruler: Ruler,
): ShownStep[] {
  const { lines } = cutLines(steps, sheet);
  const place = (x: number): number => drawn.room + drawn.scale * x;
  const spot = ({ x, y }: Spot): Spot => ({ x: place(x), y: place(y) });
  const moved = ({ x, y }: Spot): Spot => ({ x: drawn.room + x, y: drawn.room + y });
  const finishes = finishLines(steps, slot, drawn);
  const spots = numberSpots(lines, finishes, drawn.scale, sheet);
  const numbers = [...spots.cuts, ...spots.finishes];
  const labels = [...numbers.map(taken), ...labelsOf(slot, drawn, numbers)].map((one) => ({
    ...one,
    ...moved(one),
  }));
  const words = stepWords(steps, slot, ruler, drawn);
  return steps.map((step, at): ShownStep => {
    if (step.kind !== 'cut') {
      const finish = finishes.findIndex(({ number }) => number === step.number);
      const badge = moved(spots.finishes[finish]!);
      const tracks = finishes[finish]!.tracks.map((track) => track.map(spot));
      return { ...words[at]!, shown: { ...finishShown(step, slot, drawn), badge, tracks } };
    }
    const line = lines.findIndex(({ number }) => number === step.number);
    const { part, from, to } = lines[line]!;
    const size = { width: drawn.scale * part.width, height: drawn.scale * part.height };
    const cut = { part: { ...spot(part), ...size }, from: spot(from), to: spot(to) };
    const badge = moved(spots.cuts[line]!);
    const others = labels.filter((_, index) => index !== line);
    const measure = measurePlace(cut, step.at, ruler, others);
    return { ...words[at]!, shown: { kind: 'cut', ...cut, badge, measure } };
  });
}

/** The room of the labels of the pieces. */
function labelsOf({ pieces }: Slot, drawn: Drawn, numbers: readonly Spot[]): Taken[] {
  const labelled = pieces.map((placed) => laidPiece(placed, drawn));
  return labelPlaces(labelled, drawn.scale, numbers.map(taken));
}

type FinishShown = Extract<Shown, { kind: 'finish' }>;

function finishShown(
  step: FinishingStep,
  slot: Slot,
  { scale, room }: Drawn,
): Omit<FinishShown, 'badge' | 'tracks'> {
  const placed = slot.pieces.find(({ piece }) => piece.id === step.piece)!;
  const { piece } = placed;
  const lying = laid(placed, scale);
  const marks = step.kind === 'slant' ? [step.from, step.to] : [];
  return {
    kind: 'finish',
    part: { ...lying, x: room + lying.x, y: room + lying.y },
    piece: { width: toMillimetres(piece.size.width), height: toMillimetres(piece.size.height) },
    kept: keptOf(piece),
    marks: marks.map((mark) => {
      const { x, y } = placeOfMark(mark, piece.size);
      return { x: toMillimetres(x as never), y: toMillimetres(y as never) };
    }),
  };
}

function keptOf({ layer, role, paper, shape, size }: Piece): Spot[] {
  const box = { x: 0 as never, y: 0 as never, ...size };
  return outline({ id: layer, role, material: 'patterned', paper, shape, box }).map(({ x, y }) => ({
    x,
    y,
  }));
}
