import type { CutStep } from '../cutting/cut-steps.ts';
import type { PlacedPiece, Slot } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Size } from '../lengths/length.ts';
import type { Fold } from '../layouts/layout.ts';
import { outline } from '../layouts/outline.ts';
import { cutLines } from './cut-lines.ts';
import type { CutLine } from './cut-lines.ts';
import type { Mark, Spot } from './drawing.ts';
import { rectangle } from './drawing.ts';
import { hatch } from './hatch.ts';
import { CUT, INK, PAPER } from './look.ts';
import { badge } from './page.ts';
import { pencilMarks } from './pencil-marks.ts';
import { scoreLines } from './score-lines.ts';
import type { Turn } from './paint.ts';
import { laid, pieceLabels, plainTurn } from './piece-label.ts';
import type { Taken } from './piece-label.ts';

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
  /** Where a piece is scored later; left out for papers, which are not folded. */
  readonly foldOf?: (placed: PlacedPiece) => Fold | null;
}

/** A sheet with its numbered cuts, what is left over hatched, and every piece labelled. From 0, 0. */
export function cutPicture(ask: CutPictureAsk): Mark[] {
  const { sheet, scale } = ask;
  const { lines, rests } = cutLines(ask.steps, sheet);
  const whole = rectangle(0, 0, toMillimetres(sheet.width), toMillimetres(sheet.height));
  const spots = numberSpots(lines, scale, sheet);
  const labelled = ask.slot.pieces.map((placed) => ({
    placed,
    turn: ask.turnOf(placed),
    showsOther: ask.showsOther(placed),
  }));
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
    ...ask.slot.pieces.flatMap((placed) => scoreLines(placed, ask.foldOf?.(placed) ?? null, scale)),
    ...lines.flatMap((line) => drawnCut(line, scale)),
    ...pieceLabels(labelled, scale, spots.map(taken)),
    ...lines.flatMap(({ number }, at) =>
      badge(String(number), spots[at]!.x, spots[at]!.y, RADIUS, CUT),
    ),
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
export function numberSpots(lines: readonly CutLine[], scale: number, sheet: Size): Spot[] {
  const used: Spot[] = [];
  const width = scale * toMillimetres(sheet.width);
  const height = scale * toMillimetres(sheet.height);
  const within = (at: number, end: number): number => Math.min(end - RADIUS, Math.max(RADIUS, at));
  return lines.map((line) => {
    const spots = PLACES.map((part) => ({
      x: within(scale * (line.from.x + part * (line.to.x - line.from.x)), width),
      y: within(scale * (line.from.y + part * (line.to.y - line.from.y)), height),
    }));
    const free = spots.find((spot) =>
      used.every(({ x, y }) => Math.hypot(spot.x - x, spot.y - y) > 2.2 * RADIUS),
    );
    const spot = free ?? spots[0]!;
    used.push(spot);
    return spot;
  });
}

const RADIUS = 2.9;
/** Parts of a line's length at which its number may sit, the best first. */
const PLACES = [0.08, 0.92, 0.25, 0.75, 0.5, 0.38, 0.62] as const;

/** The room that a cut's number takes. */
export function taken({ x, y }: Spot): Taken {
  return { x: x - RADIUS, y: y - RADIUS, width: 2 * RADIUS, height: 2 * RADIUS };
}

/** Where a slanted or shaped piece is cut last, as a dashed line, when its shown side lies up. */
function slantOf(placed: PlacedPiece, ask: CutPictureAsk): Mark[] {
  const { piece } = placed;
  if (piece.shape.kind === 'rectangle' || ask.showsOther(placed)) return [];
  const { x, y, width, height } = laid(placed, ask.scale);
  const turn = ask.turnOf(placed) ?? plainTurn(placed);
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
      marks: [
        ...corners.map((from, index): Mark => {
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
        ...pencilMarks(piece, ask.scale),
      ],
    },
  ];
}
