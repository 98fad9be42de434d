import type { Length } from '../lengths/length.ts';
import { halves, pairFaults } from './check-pair.ts';
import type { CutTree, CuttingScheme, Piece, PlacedPiece, Slot } from './piece.ts';

/** What a scheme has to keep besides geometry: see `CutSettings`. */
export interface SchemeRules {
  readonly apart: boolean;
  readonly keepUp: boolean;
}

interface Part {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Finds what is wrong with a scheme, knowing nothing of how it was made.
 *
 * Checks  every piece is cut exactly once, at its exact size, inside its sheet, over no other; every
 *         cut runs from edge to edge of the part it divides; parts and left-overs add up to the sheet;
 *         only two triangles may share a rectangle, and they lie in its two halves;
 *         no piece that keeps its up is turned; papers of one card stay together and apart as asked;
 *         the bound is not above the number of sheets, and 'proven' says no more than the bound.
 * Gives   the faults as sentences; none when all is well.
 */
export function checkScheme(
  pieces: readonly Piece[],
  scheme: CuttingScheme,
  rules: SchemeRules = { apart: true, keepUp: false },
): string[] {
  return [
    ...allThere(pieces, scheme),
    ...scheme.slots.flatMap((slot) => slotFaults(slot, scheme, rules)),
    ...(rules.apart ? paperFaults(scheme) : []),
    ...boundFaults(scheme),
  ];
}

function allThere(pieces: readonly Piece[], { slots }: CuttingScheme): string[] {
  const times = new Map(pieces.map((piece) => [piece.id, 0]));
  const faults: string[] = [];
  for (const { piece } of slots.flatMap((slot) => slot.pieces)) {
    const before = times.get(piece.id);
    if (before === undefined) faults.push(`${piece.id} was never asked for`);
    else times.set(piece.id, before + 1);
  }
  for (const [id, count] of times) if (count !== 1) faults.push(`${id} is cut ${count} times`);
  return faults;
}

function slotFaults(slot: Slot, { sheet }: CuttingScheme, rules: SchemeRules): string[] {
  const cut = new Map<string, Part>();
  const faults: string[] = [];
  const area = walk(slot.cuts, { x: 0, y: 0, ...sheet }, cut, faults);
  if (area !== sheet.width * sheet.height) faults.push('parts do not add up to the sheet');
  if (cut.size !== slot.pieces.length) faults.push('cuts and pieces differ in number');
  faults.push(...pairFaults(slot, rules));
  for (const placed of slot.pieces) {
    const { piece } = placed;
    const lies = areaOf(placed);
    if (!same(cut.get(piece.id), lies)) faults.push(`${piece.id} does not lie where it is cut`);
    if (!inside(lies, sheet)) faults.push(`${piece.id} leaves the sheet`);
    if (placed.turned && (rules.keepUp || piece.keepUp === true))
      faults.push(`${piece.id} is turned though it keeps its up`);
  }
  slot.pieces.forEach((one, index) => {
    for (const other of slot.pieces.slice(index + 1))
      if (overlap(areaOf(one), areaOf(other)) && !halves(one, other))
        faults.push(`${one.piece.id} lies over ${other.piece.id}`);
  });
  return faults.map((fault) => `${slot.id}: ${fault}`);
}

/** Follows the cuts down to pieces and left-overs; gives the area of all leaves. */
function walk(tree: CutTree, part: Part, cut: Map<string, Part>, faults: string[]): number {
  if (tree.kind === 'piece') {
    for (const piece of tree.twin === undefined ? [tree.piece] : [tree.piece, tree.twin]) {
      if (cut.has(piece)) faults.push(`${piece} comes out twice`);
      cut.set(piece, part);
    }
    return part.width * part.height;
  }
  if (tree.kind === 'rest') {
    const { width, height } = tree.size;
    if (width !== part.width || height !== part.height) faults.push('a left-over has another size');
    return width * height;
  }
  const { way, at } = tree;
  const across = way === 'vertical' ? part.width : part.height;
  if (!Number.isInteger(at) || at <= 0 || at >= across)
    faults.push(`a cut at ${at} misses its part`);
  const first: Part = way === 'vertical' ? { ...part, width: at } : { ...part, height: at };
  const second: Part =
    way === 'vertical'
      ? { ...part, x: part.x + at, width: part.width - at }
      : { ...part, y: part.y + at, height: part.height - at };
  return walk(tree.first, first, cut, faults) + walk(tree.second, second, cut, faults);
}

function paperFaults({ slots }: CuttingScheme): string[] {
  const homes = new Map<string, { piece: Piece; slot: string }[]>();
  for (const slot of slots)
    for (const { piece } of slot.pieces) {
      const key = String(piece.card);
      homes.set(key, [...(homes.get(key) ?? []), { piece, slot: slot.id }]);
    }
  const faults: string[] = [];
  for (const cards of homes.values())
    cards.forEach((one, index) => {
      for (const other of cards.slice(index + 1)) {
        const paper = one.piece.paper === other.piece.paper;
        if (paper === (one.slot === other.slot)) continue;
        const how = paper ? 'must share a sheet with' : 'must not share a sheet with';
        faults.push(`${one.piece.id} ${how} ${other.piece.id}`);
      }
    });
  return faults;
}

function boundFaults({ slots, fewestSheets, proven }: CuttingScheme): string[] {
  const faults: string[] = [];
  if (slots.length < fewestSheets) faults.push('fewer sheets than its own bound');
  if (proven !== (slots.length === fewestSheets))
    faults.push('proven does not follow from the bound');
  return faults;
}

function areaOf({ piece, x, y, turned }: PlacedPiece): Part {
  const { width, height } = piece.size;
  return turned ? { x, y, width: height, height: width } : { x, y, width, height };
}

function same(a: Part | undefined, b: Part): boolean {
  return a?.x === b.x && a.y === b.y && a.width === b.width && a.height === b.height;
}

function inside({ x, y, width, height }: Part, sheet: { width: Length; height: Length }): boolean {
  return x >= 0 && y >= 0 && x + width <= sheet.width && y + height <= sheet.height;
}

function overlap(a: Part, b: Part): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}
