import type { CutStep, TrimmerStep, Yield } from '../cutting/cut-steps.ts';
import type { FinishingStep, Mark } from '../cutting/finishing-steps.ts';
import type { Slot } from '../cutting/piece.ts';
import { INCH } from '../lengths/length.ts';
import type { Ruler, Size } from '../lengths/length.ts';
import type { Lying } from './laid.ts';
import { plainTurn } from './laid.ts';
import { keptCorner } from './square-corner.ts';
import type { Place } from './square-corner.ts';
import { capital, lengthSaid, pieceSaid as layerNamed, sizeSaid } from './said.ts';

type SlantStep = Extract<FinishingStep, { kind: 'slant' }>;

/** A step as she reads it: what to set or mark, large, and what comes of it, small. */
export interface StepWords {
  readonly number: number;
  readonly main: string;
  readonly small: string;
}

/**
 * The steps of a sheet in words. A part that is cut again is named by the cuts around it, not by a letter.
 * A slanted piece of plain cardstock has no arrow; it is laid by its size.
 * How pieces lie on the sheet may be left out where none is finished or none lies turned over.
 */
export function stepWords(
  steps: readonly CutStep[],
  slot: Slot,
  ruler: Ruler,
  lying: Lying = AS_CUT,
): StepWords[] {
  const parts = partsOf(steps);
  const turned = steps.find((step) => step.kind === 'cut' && step.turn);
  return steps.map((step) =>
    step.kind === 'cut'
      ? cutWords(step, step === turned, parts, slot, ruler)
      : finishWords(step, slot, ruler, lying),
  );
}

const AS_CUT: Lying = { turnOf: plainTurn, showsOther: () => false };

interface Part {
  /** 'below cut 1'. */
  readonly where: string;
  /** The cut that divides it. */
  readonly next: number;
}

function partsOf(steps: readonly CutStep[]): Map<string, Part> {
  const cuts = steps.filter((step) => step.kind === 'cut');
  const parts = new Map<string, Part>();
  for (const cut of cuts) {
    const down = cut.way === 'vertical';
    for (const [given, side] of [
      [cut.first, down ? 'left of' : 'above'],
      [cut.second, down ? 'right of' : 'below'],
    ] as const) {
      if (given.kind !== 'part') continue;
      const next = cuts.find((later) => later.part === given.name)?.number ?? 0;
      parts.set(given.name, { where: `${side} cut ${cut.number}`, next });
    }
  }
  return parts;
}

function cutWords(
  step: TrimmerStep,
  firstTurned: boolean,
  parts: ReadonlyMap<string, Part>,
  slot: Slot,
  ruler: Ruler,
): StepWords {
  const down = step.way === 'vertical';
  const part = parts.get(step.part);
  const whole = part === undefined ? 'the whole sheet' : `the part ${part.where}`;
  const act = step.turn
    ? `turn ${whole} a quarter${firstTurned ? '; left and top stay those of the picture' : ''}`
    : `cut ${whole}`;
  const small = [
    step.sameSetting ? `The ruler stays: ${act}.` : `${capital(act)}.`,
    `${down ? 'Left' : 'Top'}: ${yieldSaid(step.first, parts, slot, ruler)}.`,
    `${down ? 'Right' : 'Below'}: ${yieldSaid(step.second, parts, slot, ruler)}.`,
  ];
  return {
    number: step.number,
    main: `${lengthSaid(step.at, ruler)} from the ${down ? 'left' : 'top'}`,
    small: small.join(' '),
  };
}

function yieldSaid(
  given: Yield,
  parts: ReadonlyMap<string, Part>,
  slot: Slot,
  ruler: Ruler,
): string {
  switch (given.kind) {
    case 'part':
      return `keep it for cut ${parts.get(given.name)?.next ?? 'later'}`;
    case 'piece':
      return sizedPiece(given, slot, ruler);
    case 'rest':
      return restSaid(given.size, ruler);
  }
}

/** 'card 3 panel, 4 x 5 1/4 in': what lies in her hand, to check by. */
function sizedPiece(
  { piece: id, twin }: Extract<Yield, { kind: 'piece' }>,
  slot: Slot,
  ruler: Ruler,
): string {
  const piece = slot.pieces.find((one) => one.piece.id === id)?.piece;
  const name =
    twin === undefined
      ? pieceSaid(id, slot)
      : `${pieceSaid(id, slot)} and ${twinSaid(id, twin, slot)} in one`;
  return piece === undefined ? name : `${name}, ${sizeSaid(piece.size, ruler)}`;
}

/** A sliver is no left-over to think about: it only has to go. */
function restSaid(size: Size, ruler: Ruler): string {
  const narrow = size.width < size.height ? size.width : size.height;
  return narrow <= SLIVER
    ? `trim away ${lengthSaid(narrow, ruler)}`
    : `left over, ${sizeSaid(size, ruler)}`;
}

/** 1/8 in: what is no wider falls off as a thread of paper. */
const SLIVER = INCH / 8;

/** 'card 3 panel'. */
function pieceSaid(id: string, slot: Slot): string {
  const piece = slot.pieces.find((one) => one.piece.id === id)?.piece;
  return piece === undefined ? id : `card ${piece.card} ${layerNamed(piece)}`;
}

/** The other of two triangles; its card only where that is another. */
function twinSaid(id: string, twin: string, slot: Slot): string {
  const card = slot.pieces.find((one) => one.piece.id === id)?.piece.card;
  const other = slot.pieces.find((one) => one.piece.id === twin)?.piece;
  return other?.card === card && other !== undefined ? layerNamed(other) : pieceSaid(twin, slot);
}

/** How a piece is laid to be finished: the way that its marks are named by. */
function laidSaid(
  { piece: id, ...step }: FinishingStep,
  slot: Slot,
  ruler: Ruler,
  { turnOf, showsOther }: Lying,
): string {
  const placed = slot.pieces.find((one) => one.piece.id === id);
  if (placed !== undefined && turnOf(placed) === null) {
    const { width, height } = placed.piece.size;
    return `Lay it ${lengthSaid(width, ruler)} wide and ${lengthSaid(height, ruler)} high.`;
  }
  const over = placed !== undefined && showsOther(placed);
  const arrow = 'twin' in step ? `the arrow of ${pieceSaid(id, slot)}` : 'its arrow';
  return `${over ? 'Turn it over: shown' : 'Shown'} side up, ${arrow} up.`;
}

function finishWords(step: FinishingStep, slot: Slot, ruler: Ruler, lying: Lying): StepWords {
  const piece = capital(pieceSaid(step.piece, slot));
  const { number } = step;
  const laid = laidSaid(step, slot, ruler, lying);
  if (step.kind === 'slant' && step.twin !== undefined)
    return partedWords(step, step.twin, laid, slot);
  if (step.kind === 'slant')
    return {
      number,
      main: `${piece}: slant`,
      small: `${laid} ${slantSaid(step, ruler)}${keptSaid(step, slot)}`,
    };
  const { shape } = step;
  switch (shape.kind) {
    case 'circle':
      return { number, main: `${piece}: round`, small: 'Cut the disc that just fits the piece.' };
    case 'rounded':
      return {
        number,
        main: `${piece}: corners`,
        small: `Round the four corners, radius ${lengthSaid(shape.radius, ruler)}.`,
      };
    case 'banner':
      return {
        number,
        main: `${piece}: notch`,
        small: `${laid} In the middle of the height, mark ${lengthSaid(shape.notch, ruler)} in from the right end; cut to the mark from both right corners.`,
      };
  }
}

/** Two triangles of one rectangle: one cut, from corner to corner. */
function partedWords(step: SlantStep, twin: string, laid: string, slot: Slot): StepWords {
  const [one, other] = [pieceSaid(step.piece, slot), twinSaid(step.piece, twin, slot)];
  const kept = keptSaid(step, slot)
    .replace(/^ Keep t/, 'T')
    .replace(/\.$/, '');
  return {
    number: step.number,
    main: `${capital(one)} and ${other}: cut apart`,
    small: `${laid} Cut from ${cornerSaid(step.from)} to ${cornerSaid(step.to)}. ${kept} is ${one}, the other ${other}.`,
  };
}

/** Which part is the piece, once it is cut along a slant. */
function keptSaid({ piece: id, from, to }: SlantStep, slot: Slot): string {
  const piece = slot.pieces.find((one) => one.piece.id === id)?.piece;
  if (piece === undefined) return '';
  const { shape, size } = piece;
  const kept = keptCorner(shape, size, placeOfMark(from, size), placeOfMark(to, size));
  return kept === null ? '' : ` Keep the part with the ${kept} corner.`;
}

/** A pencil mark as a place on the rectangle of its piece. */
export function placeOfMark({ corner, edge, distance }: Mark, { width, height }: Size): Place {
  const along = edge === 'left' || edge === 'right';
  if (along)
    return {
      x: edge === 'left' ? 0 : width,
      y: corner.startsWith('upper') ? distance : height - distance,
    };
  return {
    x: corner.endsWith('left') ? distance : width - distance,
    y: edge === 'upper' ? 0 : height,
  };
}

/** Which marks to make, and the cut between them: a corner needs no mark. */
function slantSaid({ from, to }: SlantStep, ruler: Ruler): string {
  const marks = [from, to].filter(({ distance }) => distance !== 0);
  const [first, second] = marks.map((mark) => markSaid(mark, ruler));
  if (first === undefined) return `Cut from ${cornerSaid(from)} to ${cornerSaid(to)}.`;
  if (second !== undefined)
    return `Make a mark ${first}, and another ${second}. Cut from mark to mark.`;
  return `Make a mark ${first}. Cut from there to ${cornerSaid(from.distance === 0 ? from : to)}.`;
}

/** 'on the left edge, 1 in below the upper left corner'. */
function markSaid({ corner, edge, distance }: Mark, ruler: Ruler): string {
  const upright = edge === 'left' || edge === 'right';
  const away = upright
    ? corner.startsWith('upper')
      ? 'below'
      : 'above'
    : `to the ${corner.endsWith('left') ? 'right' : 'left'} of`;
  return `on the ${edge} edge, ${lengthSaid(distance, ruler)} ${away} ${cornerSaid({ corner })}`;
}

function cornerSaid({ corner }: Pick<Mark, 'corner'>): string {
  return `the ${corner} corner`;
}
