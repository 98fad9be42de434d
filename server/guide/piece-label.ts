import { squareCornerOf } from '../cutting/pairs.ts';
import type { PlacedPiece } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Mark, Spot } from './drawing.ts';
import { rectangle } from './drawing.ts';
import { widthOf } from './letters.ts';
import { HAIR, INK, PAPER, SIZES } from './look.ts';
import { upArrow } from './page.ts';
import type { Turn } from './paint.ts';
import { layerSaid } from './said.ts';

/** A part of the drawing that is taken: nothing else is written over it. */
export interface Taken {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Labelled {
  readonly placed: PlacedPiece;
  readonly turn: Turn | null;
  readonly showsOther: boolean;
}

/** A piece as it is drawn, in mm of the page. */
export function laid({ piece, x, y, turned }: PlacedPiece, scale: number): Taken {
  const [width, height] = turned
    ? [piece.size.height, piece.size.width]
    : [piece.size.width, piece.size.height];
  return {
    x: scale * toMillimetres(x),
    y: scale * toMillimetres(y),
    width: scale * toMillimetres(width),
    height: scale * toMillimetres(height),
  };
}

/** How a piece of plain paper is turned to lie on the card. */
export function plainTurn({ turned, pair }: PlacedPiece): Turn {
  return (((turned ? 90 : 0) + 360 - (pair?.spin ?? 0)) % 360) as Turn;
}

/** Where the label of a piece may stand: of a triangle, in its square corner, so that it lies on what is kept. */
function roomOf({ placed, turn, showsOther }: Labelled, scale: number): Taken {
  const whole = laid(placed, scale);
  const corner = squareCornerOf(placed.piece);
  if (corner === null) return whole;
  const lying = (corner + 4 - (turn ?? plainTurn(placed)) / 90) % 4;
  const right = (lying === 1 || lying === 2) !== showsOther;
  const [width, height] = [whole.width / 2, whole.height / 2];
  const x = whole.x + (right ? width : 0);
  return { x, y: whole.y + (lying >= 2 ? height : 0), width, height };
}

/**
 * The labels of the pieces: the card's number, the layer, whether it shows the other side, and an arrow to
 * the card's up, set along the longer side. In a crowded place the label moves along its piece; where
 * there is no room for the words, the number stands alone. Letters are never made smaller.
 */
export function pieceLabels(
  pieces: readonly Labelled[],
  scale: number,
  badges: readonly Taken[],
): Mark[] {
  return placedLabels(pieces, scale, badges).map(({ one, spot, choice, tall }) =>
    labelAt(spot, choice, one, tall),
  );
}

/** The room that each of these labels takes. */
export function labelPlaces(
  pieces: readonly Labelled[],
  scale: number,
  badges: readonly Taken[],
): Taken[] {
  return placedLabels(pieces, scale, badges).map(({ spot, choice, tall }) =>
    reach(spot, choice, tall),
  );
}

interface PlacedLabel {
  readonly one: Labelled;
  readonly spot: Spot;
  readonly choice: Choice;
  readonly tall: boolean;
}

function placedLabels(
  pieces: readonly Labelled[],
  scale: number,
  badges: readonly Taken[],
): PlacedLabel[] {
  const taken = [...badges];
  return pieces.map((one) => {
    const place = roomOf(one, scale);
    const tall = place.height > place.width * 1.25;
    const free = freePlace(place, tall, choicesOf(one, tall ? place.width : place.height), taken);
    // A label that is larger than the corner of its triangle still lies on the piece.
    const spot = within(laid(one.placed, scale), reach(free.spot, free.choice, tall), free.spot);
    taken.push(reach(spot, free.choice, tall));
    return { one, tall, choice: free.choice, spot };
  });
}

interface Choice {
  readonly number: number;
  readonly text: string;
  readonly arrow: number;
  readonly width: number;
  readonly height: number;
}

/** The label with its words, then with less. */
function choicesOf({ placed, turn, showsOther }: Labelled, short: number): Choice[] {
  const { card, layer } = placed.piece;
  const number = Math.max(SIZES.small, Math.min(SIZES.large, short * 0.62));
  const name = layerSaid(layer);
  const texts = showsOther ? [`${name}, other side`, 'other side', ''] : [name, ''];
  const arrow = turn === null ? 0 : number * 0.9;
  return texts.map((text) => ({
    number,
    text,
    arrow,
    width:
      widthOf(String(card), number, true) +
      (text === '' ? 0 : widthOf(text, SIZES.small) + 1) +
      (arrow === 0 ? 0 : arrow + 0.8) +
      2.2,
    height: number * 1.25,
  }));
}

/** Parts of the free length by which a label may be moved from the middle, the best first. */
const SHIFTS = [0, 0.25, -0.25, 0.5, -0.5, 0.38, -0.38, 0.12, -0.12] as const;

function freePlace(
  { x, y, width, height }: Taken,
  tall: boolean,
  choices: readonly Choice[],
  taken: readonly Taken[],
): { spot: Spot; choice: Choice } {
  const middle = { x: x + width / 2, y: y + height / 2 };
  const long = tall ? height : width;
  for (const choice of choices) {
    const loose = long - choice.width - 1;
    if (loose < 0) continue;
    for (const shift of SHIFTS) {
      const spot = tall
        ? { x: middle.x, y: middle.y + shift * loose }
        : { x: middle.x + shift * loose, y: middle.y };
      const mine = reach(spot, choice, tall);
      if (taken.every((other) => apart(mine, other))) return { spot, choice };
    }
  }
  return { spot: middle, choice: choices.at(-1)! };
}

function reach({ x, y }: Spot, { width, height }: Choice, tall: boolean): Taken {
  const [w, h] = tall ? [height, width] : [width, height];
  return { x: x - w / 2, y: y - h / 2, width: w, height: h };
}

/** The middle of a label, moved so that the label lies inside, where it is not too large for that. */
function within(whole: Taken, label: Taken, { x, y }: Spot): Spot {
  const moved = (at: number, size: number, from: number, room: number): number =>
    size > room ? at : Math.min(from + room - size / 2, Math.max(from + size / 2, at));
  return {
    x: moved(x, label.width, whole.x, whole.width),
    y: moved(y, label.height, whole.y, whole.height),
  };
}

function apart(a: Taken, b: Taken): boolean {
  return (
    a.x >= b.x + b.width || b.x >= a.x + a.width || a.y >= b.y + b.height || b.y >= a.y + a.height
  );
}

function labelAt(
  { x, y }: Spot,
  { number, text, arrow, width, height }: Choice,
  { placed, turn, showsOther }: Labelled,
  tall: boolean,
): Mark {
  const left = -width / 2;
  const card = String(placed.piece.card);
  const marks: Mark[] = [
    {
      kind: 'area',
      corners: rectangle(left, -height / 2, width, height),
      fill: PAPER,
      opacity: 0.92,
      edge: { width: 0.2, colour: HAIR },
    },
    { kind: 'words', x: left + 1.1, y: number * 0.34, text: card, size: number, bold: true },
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
      x: left + width - 0.9 - arrow / 2,
      y: 0,
      // Seen through the sheet, a quarter turn goes the other way round.
      turned: (tall ? 90 : 0) - (showsOther ? -turn : turn),
      marks: [{ kind: 'area', corners: upArrow(0, 0, number * 0.95), fill: INK }],
    });
  return { kind: 'group', x, y, turned: tall ? -90 : 0, marks };
}
