import { units } from '../lengths/length.ts';
import type { Length, Size } from '../lengths/length.ts';
import type { CutTree, Piece, PlacedPiece, Slot } from './piece.ts';
import type { CutPlan } from './packings.ts';

/** A plan whose leaves are the pieces themselves, with the exact room that it needs. */
type Needed =
  | {
      readonly width: number;
      readonly height: number;
      readonly piece: Piece;
      readonly turned: boolean;
    }
  | {
      readonly width: number;
      readonly height: number;
      readonly way: 'vertical' | 'horizontal';
      readonly first: Needed;
      readonly second: Needed;
    };

interface Part {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Turns a plan on the grid into exact cuts on the sheet.
 *
 * What a part holds more than its pieces need is cut off before it is divided, so that a trim is one
 * stroke for all pieces beyond it and what is left over stays in one piece.
 */
export function cutSlot(
  id: string,
  sheet: Size,
  plan: CutPlan,
  take: (kind: number) => { piece: Piece; turned: boolean },
): Slot {
  const needed = needOf(plan, take);
  const placed: PlacedPiece[] = [];
  const cuts = cutOut(needed, { x: 0, y: 0, ...sheet }, placed);
  return { id, pieces: placed, cuts };
}

function needOf(plan: CutPlan, take: (kind: number) => { piece: Piece; turned: boolean }): Needed {
  if ('kind' in plan) {
    const { piece, turned: lying } = take(plan.kind);
    const turned = lying !== plan.turned;
    const { width, height } = piece.size;
    return turned
      ? { piece, turned, width: height, height: width }
      : { piece, turned, width, height };
  }
  const { way } = plan;
  const [first, second] = [needOf(plan.first, take), needOf(plan.second, take)];
  return way === 'vertical'
    ? {
        way,
        first,
        second,
        width: first.width + second.width,
        height: Math.max(first.height, second.height),
      }
    : {
        way,
        first,
        second,
        width: Math.max(first.width, second.width),
        height: first.height + second.height,
      };
}

function cutOut(needed: Needed, part: Part, placed: PlacedPiece[]): CutTree {
  const spareWidth = part.width - needed.width;
  const spareHeight = part.height - needed.height;
  const wideFirst = spareWidth * part.height >= spareHeight * part.width;
  if (spareWidth > 0 && (wideFirst || spareHeight === 0))
    return trim('vertical', needed.width, needed, part, placed);
  if (spareHeight > 0) return trim('horizontal', needed.height, needed, part, placed);
  if ('piece' in needed) {
    const { piece, turned } = needed;
    placed.push({ piece, turned, x: units(part.x), y: units(part.y) });
    return { kind: 'piece', piece: piece.id };
  }
  const { way, first, second } = needed;
  const at = way === 'vertical' ? first.width : first.height;
  const [one, other] = divided(part, way, at);
  return {
    kind: 'cut',
    way,
    at: units(at),
    first: cutOut(first, one, placed),
    second: cutOut(second, other, placed),
  };
}

function trim(
  way: 'vertical' | 'horizontal',
  at: number,
  needed: Needed,
  part: Part,
  placed: PlacedPiece[],
): CutTree {
  const [kept, rest] = divided(part, way, at);
  const size = { width: rest.width as Length, height: rest.height as Length };
  const first = cutOut(needed, kept, placed);
  return { kind: 'cut', way, at: units(at), first, second: { kind: 'rest', size } };
}

function divided(part: Part, way: 'vertical' | 'horizontal', at: number): [Part, Part] {
  return way === 'vertical'
    ? [
        { ...part, width: at },
        { ...part, x: part.x + at, width: part.width - at },
      ]
    : [
        { ...part, height: at },
        { ...part, y: part.y + at, height: part.height - at },
      ];
}
