import { slotOf } from '../cutting/cut-scheme.ts';
import { workOn } from '../cutting/lots.ts';
import { Oracle } from '../cutting/oracle.ts';
import type { CuttingScheme, PlacedPiece, Slot } from '../cutting/piece.ts';
import type { CutSettings } from '../cutting/settings.ts';
import type { Sheet } from '../pad/pad.ts';
import type { Before } from './as-it-lies.ts';
import { hasTies } from './faces-up.ts';
import { newPins, sheetOf, slotHolding } from './new-pins.ts';
import type { Pin } from './plan.ts';

/** All pieces of one paper of one card: they stay on one sheet. */
interface Group {
  readonly card: number;
  readonly paper: string;
}

/** Other cuts for the sheets that lie there, and the cards of which pieces are cut from another sheet by them. */
export interface Moved {
  readonly scheme: CuttingScheme;
  readonly cards: readonly number[];
}

/** So many ways that sheets have room for are told; each is planned. */
const MOST_WAYS = 2;
/** So many are asked for room, some milliseconds each. */
const MOST_TRIES = 24;
/** So many are looked at: with many sheets most pairs of moves only shuffle what has no room. */
const MOST_LOOKED = 2000;

/**
 * The cuts of before with only those pieces on another sheet that new pins ask for, so that each other piece keeps its
 * paper. Where a sheet has no room for what comes, one or two more of its pieces go elsewhere.
 *
 * Takes       the plan and the cuts of before, all pins, the sheets of the pad, and how sheets are cut.
 * Gives       up to two such ways, the one that moves fewest pieces first; none where no piece has to move, where a wanted sheet lies
 *             nowhere yet, or where no sheet holds the pieces.
 */
export function piecesMoved(
  before: Before & { readonly scheme: CuttingScheme },
  pins: readonly Pin[],
  sheets: readonly Sheet[],
  settings: CutSettings,
): Moved[] {
  const { scheme, plan } = before;
  if (hasTies(scheme)) return [];
  const homes = new Map<string, string>();
  for (const pin of newPins(before.pins, pins)) {
    const group = groupAt(scheme, pin);
    const sheet = sheetOf(sheets, pin);
    const here = slotHolding(plan.cards, pin);
    if (group === null || sheet === undefined || here === null) return [];
    if (plan.slots[here] === sheet.id) continue;
    const there = scheme.slots.find(({ id }) => plan.slots[id] === sheet.id);
    if (there === undefined) return [];
    homes.set(keyOf(group), there.id);
  }
  if (homes.size === 0) return [];
  const found: Moved[] = [];
  let tries = 0;
  for (const way of waysWithRoom(scheme, homes, pins)) {
    const moved = recut(scheme, way, settings);
    if (moved !== null && found.push(moved) === MOST_WAYS) break;
    if (++tries === MOST_TRIES) break;
  }
  return found;
}

/** Slot ids by the key of the group that moves there. */
type Homes = ReadonlyMap<string, string>;

/** The wish as it is, then with one group more that moves, then with two; only those for which the areas have room. */
function* waysWithRoom(
  scheme: CuttingScheme,
  homes: Homes,
  pins: readonly Pin[],
): Generator<Homes> {
  const groups = groupsOf(scheme);
  let looked = 0;
  for (const way of waysFrom(scheme, groups, homes, pins)) {
    if (hasRoom(scheme, groups, way)) yield way;
    if (++looked === MOST_LOOKED) return;
  }
}

function* waysFrom(
  scheme: CuttingScheme,
  groups: readonly GroupIn[],
  homes: Homes,
  pins: readonly Pin[],
): Generator<Homes> {
  yield homes;
  const held = new Set(
    pins.flatMap((pin) => {
      const group = groupAt(scheme, pin);
      return group === null ? [] : [keyOf(group)];
    }),
  );
  const wished = groups.filter(({ key }) => homes.has(key));
  const open = new Set(wished.flatMap(({ key, slot }) => [slot, homes.get(key)!]));
  const extras = groups
    .filter(({ key, slot }) => open.has(slot) && !held.has(key) && !homes.has(key))
    .flatMap(({ key, slot }) =>
      scheme.slots.filter(({ id }) => id !== slot).map(({ id }) => [key, id] as const),
    )
    // A third sheet that is cut anew is better spared.
    .sort((a, b) => Number(open.has(b[1])) - Number(open.has(a[1])));
  for (const extra of extras) yield new Map([...homes, extra]);
  for (const [at, extra] of extras.entries())
    for (const other of extras.slice(at + 1))
      if (other[0] !== extra[0]) yield new Map([...homes, extra, other]);
}

/** Whether no sheet that gives or gets pieces is asked for more than its area, nor for two papers of one card. */
function hasRoom({ sheet }: CuttingScheme, groups: readonly GroupIn[], way: Homes): boolean {
  const moving = groups.filter(({ key }) => way.has(key));
  const touched = new Set(moving.flatMap(({ key, slot }) => [slot, way.get(key)!]));
  return [...touched].every((id) => {
    const here = groups.filter(({ key, slot }) => (way.get(key) ?? slot) === id);
    const area = here.reduce((sum, group) => sum + group.area, 0);
    return (
      here.length > 0 &&
      area <= sheet.width * sheet.height &&
      new Set(here.map(({ card }) => card)).size === here.length
    );
  });
}

interface GroupIn {
  readonly key: string;
  readonly card: number;
  readonly slot: string;
  readonly area: number;
}

function groupsOf({ slots }: CuttingScheme): GroupIn[] {
  return slots.flatMap(({ id, pieces }) =>
    [...new Set(pieces.map(({ piece }) => keyOf(piece)))].map((key) => {
      const own = pieces.filter(({ piece }) => keyOf(piece) === key);
      const area = own.reduce((sum, placed) => sum + areaOf(placed), 0);
      return { key, card: own[0]!.piece.card, slot: id, area };
    }),
  );
}

/** The slots that give or get pieces cut anew; null where one of them has no room for its pieces. */
function recut(scheme: CuttingScheme, homes: Homes, settings: CutSettings): Moved | null {
  const homeOf = (slot: Slot, { piece }: PlacedPiece): string => homes.get(keyOf(piece)) ?? slot.id;
  const moves = scheme.slots.flatMap((slot) =>
    slot.pieces
      .filter((placed) => homeOf(slot, placed) !== slot.id)
      .map((placed) => ({ slot, placed })),
  );
  const touched = new Set(moves.flatMap(({ slot, placed }) => [slot.id, homeOf(slot, placed)]));
  const all = scheme.slots.flatMap((slot) =>
    slot.pieces.map((placed) => ({ piece: placed.piece, home: homeOf(slot, placed) })),
  );
  const fresh = new Map<string, Slot>();
  for (const id of touched) {
    const own = all.filter(({ home }) => home === id).map(({ piece }) => piece);
    const work = workOn(own, scheme.sheet, settings);
    const oracle = new Oracle(work);
    if (!oracle.fits(work.lots)) return null;
    fresh.set(id, slotOf(id, work.lots, scheme.sheet, work, oracle, settings));
  }
  return {
    scheme: { ...scheme, slots: scheme.slots.map((slot) => fresh.get(slot.id) ?? slot) },
    cards: [...new Set(moves.map(({ placed }) => placed.piece.card))],
  };
}

function groupAt({ slots }: CuttingScheme, { card, layer }: Pin): Group | null {
  for (const { pieces } of slots)
    for (const { piece } of pieces) if (piece.card === card && piece.layer === layer) return piece;
  return null;
}

function keyOf({ card, paper }: Group): string {
  return `${card} ${paper}`;
}

/** Two triangles of one rectangle take half of it each. */
function areaOf({ piece: { size }, pair }: PlacedPiece): number {
  return (size.width * size.height) / (pair === undefined ? 1 : 2);
}
