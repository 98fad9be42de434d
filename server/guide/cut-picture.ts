import type { CutStep } from '../cutting/cut-steps.ts';
import type { PlacedPiece, Slot } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Size } from '../lengths/length.ts';
import { outline } from '../layouts/outline.ts';
import { cutLines } from './cut-lines.ts';
import type { CutLine } from './cut-lines.ts';
import type { Mark, Spot } from './drawing.ts';
import { rectangle } from './drawing.ts';
import { hatch } from './hatch.ts';
import { shortened, widthOf } from './letters.ts';
import { CUT, HAIR, INK, PAPER, SIZES } from './look.ts';
import { badge, upArrow } from './page.ts';
import type { Turn } from './paint.ts';
import { layerSaid } from './said.ts';

export interface CutPictureAsk {
  readonly slot: Slot;
  readonly sheet: Size;
  readonly steps: readonly CutStep[];
  /** Printed mm for a mm of the sheet. */
  readonly scale: number;
  /** What the sheet looks like, in its own mm. */
  readonly face: readonly Mark[];
  /** How the piece is turned to lie on the card; null for plain paper, which has no up. */
  readonly turnOf: (placed: PlacedPiece) => Turn | null;
  /** True for pieces that show the side that lies down. */
  readonly showsOther: (placed: PlacedPiece) => boolean;
}

/** A sheet with its numbered cuts, what is left over hatched, and every piece labelled. From 0, 0. */
export function cutPicture(ask: CutPictureAsk): Mark[] {
  const { sheet, scale } = ask;
  const { lines, rests } = cutLines(ask.steps, sheet);
  const whole = rectangle(0, 0, toMillimetres(sheet.width), toMillimetres(sheet.height));
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
    ...ask.slot.pieces.flatMap((placed) => slantOf(placed, ask)),
    ...ask.slot.pieces.flatMap((placed) => label(placed, ask)),
    ...lines.flatMap((line) => drawnCut(line, scale)),
    ...numbers(lines, scale, sheet),
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

/** A number sits on its line, in the middle, or aside where another number lies already. */
function numbers(lines: readonly CutLine[], scale: number, sheet: Size): Mark[] {
  const taken: Spot[] = [];
  const width = scale * toMillimetres(sheet.width);
  const height = scale * toMillimetres(sheet.height);
  const within = (at: number, end: number): number => Math.min(end - RADIUS, Math.max(RADIUS, at));
  return lines.flatMap((line) => {
    const spots = PLACES.map((part) => ({
      x: within(scale * (line.from.x + part * (line.to.x - line.from.x)), width),
      y: within(scale * (line.from.y + part * (line.to.y - line.from.y)), height),
    }));
    const free = spots.find((spot) =>
      taken.every(({ x, y }) => Math.hypot(spot.x - x, spot.y - y) > 2.2 * RADIUS),
    );
    const spot = free ?? spots[0]!;
    taken.push(spot);
    return badge(String(line.number), spot.x, spot.y, RADIUS, CUT);
  });
}

const RADIUS = 2.6;
/** Parts of a line's length at which its number may sit, the best first. */
const PLACES = [0.08, 0.92, 0.25, 0.75, 0.5, 0.38, 0.62] as const;

interface Laid {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function laid({ piece, x, y, turned }: PlacedPiece, scale: number): Laid {
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

/** Where a slanted or shaped piece is cut last, as a dashed line, when its shown side lies up. */
function slantOf(placed: PlacedPiece, ask: CutPictureAsk): Mark[] {
  const { piece } = placed;
  if (piece.shape.kind === 'rectangle' || ask.showsOther(placed)) return [];
  const { x, y, width, height } = laid(placed, ask.scale);
  const turn = ask.turnOf(placed) ?? (placed.turned ? 90 : 0);
  const [w, h] = [toMillimetres(piece.size.width), toMillimetres(piece.size.height)];
  const corners = outline({
    id: piece.layer,
    role: piece.role,
    material: 'patterned',
    paper: piece.paper,
    shape: piece.shape,
    box: { x: 0 as never, y: 0 as never, ...piece.size },
  });
  return [
    {
      kind: 'group',
      x: x + width / 2,
      y: y + height / 2,
      turned: -turn,
      scale: ask.scale,
      marks: corners.map((from, index): Mark => {
        const to = corners[(index + 1) % corners.length]!;
        return {
          kind: 'line',
          from: { x: from.x - w / 2, y: from.y - h / 2 },
          to: { x: to.x - w / 2, y: to.y - h / 2 },
          width: 0.5 / ask.scale,
          colour: CUT,
          dashes: [2 / ask.scale, 1.2 / ask.scale],
        };
      }),
    },
  ];
}

/** The card's number, the layer, which face, and an arrow to the card's up; set along the longer side. */
function label(placed: PlacedPiece, ask: CutPictureAsk): Mark[] {
  const { x, y, width, height } = laid(placed, ask.scale);
  const tall = height > width * 1.25;
  const [long, short] = tall ? [height, width] : [width, height];
  const number = Math.min(SIZES.large, short * 0.62);
  const small = Math.min(SIZES.small, short * 0.45);
  const turn = ask.turnOf(placed);
  const room = long - 4;
  const name = `${layerSaid(placed.piece.layer)}${ask.showsOther(placed) ? ' (other side)' : ''}`;
  const card = String(placed.piece.card);
  const cardWidth = widthOf(card, number, true);
  const arrow = turn === null ? 0 : number * 0.9;
  const text = shortened(name, Math.max(small, room - cardWidth - arrow - 4), small);
  const textWidth = widthOf(text, small);
  const plate = cardWidth + textWidth + arrow + 4.2;
  const high = Math.max(number, small) * 1.25;
  const left = -plate / 2;
  const marks: Mark[] = [
    {
      kind: 'area',
      corners: rectangle(left, -high / 2, plate, high),
      fill: PAPER,
      opacity: 0.92,
      edge: { width: 0.2, colour: HAIR },
    },
    {
      kind: 'words',
      x: left + 1.2,
      y: number * 0.34,
      text: card,
      size: number,
      bold: true,
    },
    { kind: 'words', x: left + 2.2 + cardWidth, y: small * 0.32, text, size: small },
  ];
  if (turn !== null)
    marks.push({
      kind: 'group',
      x: left + plate - 1 - arrow / 2,
      y: 0,
      turned: (tall ? 90 : 0) - turn,
      marks: [{ kind: 'area', corners: upArrow(0, 0, number * 0.95), fill: INK }],
    });
  return [
    {
      kind: 'group',
      x: x + width / 2,
      y: y + height / 2,
      turned: tall ? -90 : 0,
      marks,
    },
  ];
}
