import { units } from '../lengths/length.ts';
import type { Size } from '../lengths/length.ts';
import type { CutPlan } from './packings.ts';
import { piecesIn } from './pairs.ts';
import type { Blank } from './pairs.ts';
import type { CutTree, Piece, PlacedPiece, Slot } from './piece.ts';

/** A plan whose leaves are the pieces themselves, with the exact room that it needs. */
type Needed = Leaf | Row;

interface Leaf {
  readonly width: number;
  readonly height: number;
  readonly blank: Blank;
  readonly turned: boolean;
}

interface Row {
  readonly width: number;
  readonly height: number;
  readonly way: Way;
  readonly first: Needed;
  readonly second: Needed;
}

type Way = 'vertical' | 'horizontal';

interface Part {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Turns a plan on the grid into exact cuts on the sheet.
 *
 * Strips side by side are cut one after the other with equal ones in a row, so that the ruler stays;
 * what a part holds more than its pieces need is cut off in one stroke and stays in one piece. When
 * most pieces would lie turned and all may be, the whole plan of a square sheet is turned instead.
 */
export function cutSlot(
  id: string,
  sheet: Size,
  plan: CutPlan,
  take: (kind: number) => { blank: Blank; turned: boolean },
  mayTurn: (piece: Piece) => boolean,
): Slot {
  const drawn = needOf(plan, take);
  const leaves = leavesOf(drawn);
  const lying = leaves.filter((leaf) => leaf.turned).length;
  const free =
    sheet.width === sheet.height && piecesIn(leaves.map((leaf) => leaf.blank)).every(mayTurn);
  const needed = free && 2 * lying > leaves.length ? turnedOver(drawn) : drawn;
  const placed: PlacedPiece[] = [];
  const cuts = cutOut(inRows(needed), { x: 0, y: 0, ...sheet }, placed);
  return { id, pieces: placed, cuts };
}

function needOf(plan: CutPlan, take: (kind: number) => { blank: Blank; turned: boolean }): Needed {
  if ('way' in plan) return row(plan.way, needOf(plan.first, take), needOf(plan.second, take));
  const { blank, turned: lying } = take(plan.kind);
  return leaf(blank, lying !== plan.turned);
}

function leaf(blank: Blank, lying: boolean): Leaf {
  const { width, height } = blank.piece.size;
  const turned = lying && width !== height;
  return turned
    ? { blank, turned, width: height, height: width }
    : { blank, turned, width, height };
}

function row(way: Way, first: Needed, second: Needed): Row {
  const sum = { width: first.width + second.width, height: first.height + second.height };
  return way === 'vertical'
    ? { way, first, second, width: sum.width, height: Math.max(first.height, second.height) }
    : { way, first, second, width: Math.max(first.width, second.width), height: sum.height };
}

function leavesOf(needed: Needed): Leaf[] {
  return 'blank' in needed ? [needed] : [...leavesOf(needed.first), ...leavesOf(needed.second)];
}

/** The plan mirrored at the diagonal of its sheet. */
function turnedOver(needed: Needed): Needed {
  if ('blank' in needed) return leaf(needed.blank, !needed.turned);
  const way = needed.way === 'vertical' ? 'horizontal' : 'vertical';
  return row(way, turnedOver(needed.first), turnedOver(needed.second));
}

/** Cuts that run the same way one after the other, the widest part first and equal ones in a row. */
function inRows(needed: Needed): Needed {
  if ('blank' in needed) return needed;
  const { way } = needed;
  const side = way === 'vertical' ? 'width' : 'height';
  const parts = partsAlong(needed, way).map(inRows);
  const sorted = parts
    .map((part, at) => ({ part, at }))
    .sort((a, b) => b.part[side] - a.part[side] || a.at - b.at);
  return sorted.map(({ part }) => part).reduceRight((rest, part) => row(way, part, rest));
}

function partsAlong(needed: Needed, way: Way): Needed[] {
  if ('blank' in needed || needed.way !== way) return [needed];
  return [...partsAlong(needed.first, way), ...partsAlong(needed.second, way)];
}

function cutOut(needed: Needed, part: Part, placed: PlacedPiece[]): CutTree {
  if ('blank' in needed && needed.turned && fits(leaf(needed.blank, false), part))
    return cutOut(leaf(needed.blank, false), part, placed);
  const spareWidth = 'way' in needed && needed.way === 'vertical' ? 0 : part.width - needed.width;
  const spareHeight =
    'way' in needed && needed.way === 'horizontal' ? 0 : part.height - needed.height;
  const wideFirst = spareWidth * part.height >= spareHeight * part.width;
  if (spareWidth > 0 && (wideFirst || spareHeight === 0))
    return trim('vertical', needed.width, needed, part, placed);
  if (spareHeight > 0) return trim('horizontal', needed.height, needed, part, placed);
  if ('blank' in needed) {
    placed.push(...laidOut(needed, part));
    const { piece, twin } = needed.blank;
    return twin === undefined
      ? { kind: 'piece', piece: piece.id }
      : { kind: 'piece', piece: piece.id, twin: twin.piece.id };
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

function laidOut({ blank: { piece, twin }, turned }: Leaf, part: Part): PlacedPiece[] {
  const at = { turned, x: units(part.x), y: units(part.y) };
  if (twin === undefined) return [{ piece, ...at }];
  return [
    { piece, ...at, pair: { with: twin.piece.id, spin: 0 } },
    { piece: twin.piece, ...at, pair: { with: piece.id, spin: twin.spin } },
  ];
}

function trim(way: Way, at: number, needed: Needed, part: Part, placed: PlacedPiece[]): CutTree {
  const [kept, rest] = divided(part, way, at);
  const size = { width: units(rest.width), height: units(rest.height) };
  const first = cutOut(needed, kept, placed);
  return { kind: 'cut', way, at: units(at), first, second: { kind: 'rest', size } };
}

function fits(needed: Leaf, part: Part): boolean {
  return needed.width <= part.width && needed.height <= part.height;
}

function divided(part: Part, way: Way, at: number): [Part, Part] {
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
