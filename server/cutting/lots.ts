import { exactLength, formatSize } from '../lengths/format-length.ts';
import type { Ruler, Size } from '../lengths/length.ts';
import { stepOf } from '../lengths/ruler.ts';
import { Refusal } from '../refusals/refusal.ts';
import { pairedAcross } from './pairs-across.ts';
import { paired, piecesIn } from './pairs.ts';
import type { Blank } from './pairs.ts';
import type { Piece } from './piece.ts';
import type { CutSettings } from './settings.ts';

/** A size of piece on the grid, without its number. */
export interface GridKind {
  readonly width: number;
  readonly height: number;
  readonly turn: boolean;
}

/** Pieces that must come from one sheet. */
export interface Lot {
  readonly index: number;
  /** One card, or two of which a triangle each share a rectangle. */
  readonly cards: readonly number[];
  readonly pieces: readonly Piece[];
  /** The rectangles that are cut for them. */
  readonly blanks: readonly Blank[];
  /** Kind of each rectangle. */
  readonly kinds: readonly number[];
  /** Lots with the same kinds are of one type. */
  readonly type: string;
  /** On the grid. */
  readonly area: number;
}

/** The batch on a grid of whole steps, on which all sums of pieces are exact. */
export interface Work {
  readonly width: number;
  readonly height: number;
  readonly kinds: readonly GridKind[];
  readonly lots: readonly Lot[];
  /** False when sizes were rounded up to the grid: then what does not fit on it might fit on paper. */
  readonly exact: boolean;
  /** True area of all pieces, in sheets. */
  readonly sheetsByArea: number;
  /** Whether two lots may share a sheet as far as their cards are concerned. */
  readonly mayShare: (a: Lot, b: Lot) => boolean;
}

/** A grid finer than this slows the search down without a gain. */
const FINEST = 400;

/**
 * Lays the pieces onto the grid of their common measure; when that is too fine (inches and millimetres
 * mixed) pieces are rounded up to the marks of the ruler, which can only ask for more paper. Triangles of two
 * cards are only put into one rectangle where `homeOf` gives the same for both.
 */
export function workOn(
  pieces: readonly Piece[],
  sheet: Size,
  settings: CutSettings,
  homeOf: HomeOf = () => null,
): Work {
  pieces.forEach((piece) => checkFits(piece, sheet, settings));
  const step = gridStep(pieces, sheet, settings.ruler);
  const kinds: GridKind[] = [];
  const kindOf = (blank: Blank): number => {
    const kind = onGrid(blank, step, settings);
    const known = kinds.findIndex(
      (other) =>
        other.width === kind.width && other.height === kind.height && other.turn === kind.turn,
    );
    return known >= 0 ? known : kinds.push(kind) - 1;
  };
  const lots = groups(pieces, settings, homeOf).map((blanks, index): Lot => {
    const own = blanks.map(kindOf);
    const group = piecesIn(blanks);
    const area = own.reduce((sum, kind) => sum + kinds[kind]!.width * kinds[kind]!.height, 0);
    const type = [...own].sort((a, b) => a - b).join(' ');
    const cards = [...new Set(group.map(({ card }) => card))];
    return { index, cards, pieces: group, blanks, kinds: own, type, area };
  });
  return {
    width: Math.floor(sheet.width / step),
    height: Math.floor(sheet.height / step),
    kinds,
    lots,
    exact: pieces.every(({ size }) => size.width % step === 0 && size.height % step === 0),
    sheetsByArea: areaOf(lots) / (sheet.width * sheet.height),
    mayShare: (a, b) => !settings.apart || !a.cards.some((card) => b.cards.includes(card)),
  };
}

function areaOf(lots: readonly Lot[]): number {
  return lots
    .flatMap(({ blanks }) => blanks)
    .reduce((sum, { piece }) => sum + piece.size.width * piece.size.height, 0);
}

type HomeOf = (piece: Piece) => unknown;

/** What must come from one sheet; plain cardstock may pair the triangles of any cards. */
function groups(
  pieces: readonly Piece[],
  { apart, keepUp, pairAcross = false }: CutSettings,
  homeOf: HomeOf,
): Blank[][] {
  if (!apart) return paired(pieces, keepUp).map((blank) => [blank]);
  const found = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const key = `${piece.card} ${piece.paper}`;
    found.set(key, [...(found.get(key) ?? []), piece]);
  }
  const own = [...found.values()].map((group) => paired(group, keepUp));
  return pairAcross ? pairedAcross(own, keepUp, homeOf) : own;
}

function onGrid({ piece, twin }: Blank, step: number, settings: CutSettings): GridKind {
  const width = Math.ceil(piece.size.width / step);
  const height = Math.ceil(piece.size.height / step);
  const keepUp = settings.keepUp || piece.keepUp === true || twin?.piece.keepUp === true;
  const turn = width !== height && !keepUp;
  const lying = turn && width < height;
  return lying ? { width: height, height: width, turn } : { width, height, turn };
}

function gridStep(pieces: readonly Piece[], sheet: Size, ruler: Ruler): number {
  const sides = pieces.flatMap(({ size }) => [size.width, size.height] as number[]);
  const common = sides.reduce(commonMeasure, 0);
  const longest = Math.max(sheet.width, sheet.height);
  return longest / common <= FINEST ? common : stepOf(ruler);
}

function commonMeasure(a: number, b: number): number {
  return b === 0 ? a : commonMeasure(b, a % b);
}

function checkFits(piece: Piece, sheet: Size, settings: CutSettings): void {
  const { width, height } = piece.size;
  const upright = width <= sheet.width && height <= sheet.height;
  const turn = !settings.keepUp && piece.keepUp !== true;
  if (upright || (turn && height <= sheet.width && width <= sheet.height)) return;
  const size = formatSize(piece.size, settings.ruler);
  throw new Refusal({
    kind: 'does-not-fit',
    field: `cards[${piece.card}].layers.${piece.layer}`,
    received: `${exactLength(width, settings.ruler)} x ${exactLength(height, settings.ruler)}`,
    message: `Expected "${piece.layer}" of card ${piece.card} to fit a sheet of ${formatSize(sheet, settings.ruler)} but it measures ${size}`,
    mend: 'Choose a smaller design for this card, or a pad with larger sheets.',
  });
}
