import { sheetRoom } from '../../cutting/sheet-room.ts';
import type { SheetRoom } from '../../cutting/sheet-room.ts';
import { piecesOf } from '../../cutting/pieces-of.ts';
import type { CutSettings } from '../../cutting/settings.ts';
import type { Slot } from '../../cutting/piece.ts';
import { units } from '../../lengths/length.ts';
import { papersOf } from '../../layouts/papers-of.ts';
import { expected } from '../../refusals/refusal.ts';
import type { Pad, Side } from '../../pad/pad.ts';
import type { PlanAsk } from '../ask.ts';
import type { CardTable } from '../card-table.ts';
import { withoutPlaces } from '../faces-up.ts';
import { instanceOf } from '../instance.ts';
import type { Instance } from '../instance.ts';
import type { Wide } from '../network/network.ts';
import { topsOf } from './rows.ts';
import { asLaid, liesAsLaid, onItsSide, stanceOf } from './stance.ts';
import type { Stance } from './stance.ts';

/** All that a plan is made from, when which pieces share a sheet is open too. */
export interface FreeAsk extends Omit<PlanAsk, 'scheme'> {
  readonly settings: CutSettings;
  /** No more sheets than this; left out: all of the pad. */
  readonly sheets?: number;
}

/** A card as a table of its worth over the designs of its papers. */
export interface FreeCard {
  readonly number: number;
  /** The lot of each paper, in the order of the table, the last running fastest. */
  readonly lots: readonly number[];
  /** Worth in [0, 1] for every choice of designs, -Infinity where one may not be. */
  readonly table: Float64Array;
  /** The most that each of its rows holds (rows.ts). */
  readonly tops: Float64Array;
}

/**
 * The batch without slots: each paper of each card may come from any design, and what holds it together is
 * that every sheet holds only so much.
 */
export interface FreeWorld {
  readonly ask: FreeAsk;
  readonly instance: Instance;
  readonly cards: readonly FreeCard[];
  /** The cards as if every print stood on every piece: how pieces are turned is open, and no bound may leave it out. */
  readonly standing: readonly FreeCard[];
  /** Whether the two sides of some sheet point different ways, so that one of its prints lies as it is laid. */
  readonly sideways: boolean;
  readonly room: SheetRoom;
  /** Part of a sheet that each lot fills. */
  readonly area: Float64Array;
  readonly copies: readonly number[];
  /** How the pieces of each design are laid on its sheets. */
  readonly stance: readonly Stance[];
  /** Whether these lots come out of one sheet of a design, laid as its stance says. */
  readonly fits: (lots: readonly number[], design: number) => boolean;
  /** No more sheets than this. */
  readonly most: number;
}

export function freeWorld(asked: FreeAsk): FreeWorld {
  const building = buildWorld(asked);
  for (;;) {
    const { done, value } = building.next();
    if (done === true) return value;
  }
}

/**
 * The same bit by bit: the tables of a large pad take seconds, and whoever builds them may do something else where
 * this yields.
 */
export function* buildWorld(asked: FreeAsk): Generator<undefined, FreeWorld> {
  // Where the pieces will lie is not known yet, so a side counts as a whole.
  const ask = { ...asked, pad: withoutPlaces(asked.pad) };
  const { pad, cards, settings } = ask;
  refuseManyPapers(ask);
  const room = sheetRoom(piecesOf(cards).patterned, pad.sheetSize, settings);
  const instance = instanceOf(apart({ ...ask, pad: asLaid(ask.pad, settings.keepUp) }, room));
  const sheets = instance.designs.map(({ sheet }) => sheet.id);
  const real = new Map(pad.sheets.map(({ id, copies }) => [id, copies]));
  const copies = sheets.map((id) => (ask.without.includes(id) ? 0 : real.get(id)!));
  yield;
  const free = yield* cardsOf(instance);
  const sideways = pad.sheets.some((sheet) => liesAsLaid(sheet, settings.keepUp));
  const stance = instance.designs.map(({ sheet }) =>
    stanceOf(
      pad.sheets.find(({ id }) => id === sheet.id)!,
      settings.keepUp,
    ),
  );
  const { width, height } = pad.sheetSize;
  const turnedRoom =
    width === height || !stance.includes('turned')
      ? room
      : sheetRoom(piecesOf(cards).patterned, onItsSide(pad.sheetSize), settings);
  const all = copies.reduce((sum, count) => sum + count, 0);
  const standing = sideways
    ? yield* cardsOf(instanceOf(apart({ ...ask, pad: stood(pad) }, room)))
    : free;
  return {
    ask,
    instance,
    cards: free,
    standing,
    sideways,
    room,
    area: Float64Array.from(room.lots, ({ area }) => area),
    copies,
    stance,
    fits: (lots, design) =>
      stance[design] === 'turned'
        ? turnedRoom.fits(lots, true)
        : room.fits(lots, stance[design] === 'along'),
    most: Math.min(all, ask.sheets ?? all),
  };
}

/** Cells of the table of one card, over all choices of its papers. */
const MOST_CELLS = 8_000_000;

function refuseManyPapers({ pad, cards }: FreeAsk): void {
  for (const { number, layout } of cards) {
    const papers = papersOf(layout).length;
    if (pad.sheets.length ** papers <= MOST_CELLS) continue;
    const most = Math.floor(Math.log(MOST_CELLS) / Math.log(pad.sheets.length));
    throw expected(
      `at most ${most} papers a card where any piece may come from any of ${pad.sheets.length} sheets`,
      'cards',
      papers,
      `Plan on as few sheets as can be cut, or choose another layout for card ${number}.`,
      'too-large',
    );
  }
}

function* cardsOf({
  cards,
  designs,
  network,
}: Instance): Generator<undefined, readonly FreeCard[]> {
  const every = [...designs.keys()];
  const known = new Map<unknown, Map<string, Pick<FreeCard, 'table' | 'tops'>>>();
  const free: FreeCard[] = [];
  for (const { model, table } of cards) {
    const scope = table.factor?.scope ?? table.wide!.scope;
    const allowed = scope.map((lot) => network.allowed[lot]!);
    // Cards that are alike share their table, so that what is worked out for one holds for all.
    const own = known.get(sourceOf(table)) ?? new Map<string, Pick<FreeCard, 'table' | 'tops'>>();
    known.set(sourceOf(table), own);
    const key = allowed.join(' | ');
    let shared = own.get(key);
    if (shared === undefined) {
      const whole = table.factor?.data ?? (yield* writtenOut(table.wide!, every));
      const may = only(allowed, every.length, whole);
      shared = { table: may, tops: topsOf(may, every.length) };
      own.set(key, shared);
      yield;
    }
    free.push({ number: model.card.number, lots: scope, ...shared });
  }
  return free;
}

/** The table of a card of many papers, one design of its first paper after the other. */
function* writtenOut(
  { scope, exact }: Wide,
  every: readonly number[],
): Generator<undefined, Float64Array> {
  const whole = new Float64Array(every.length ** scope.length);
  const part = whole.length / every.length;
  for (const design of every) {
    whole.set(exact(scope.map((_, at) => (at === 0 ? [design] : every))), design * part);
    yield;
  }
  return whole;
}

/** The pad with every print standing in its swatch. */
function stood(pad: Pad): Pad {
  const turned = (side: Side | null): Side | null =>
    side && { ...side, pattern: { ...side.pattern, up: 0 } };
  const sheets = pad.sheets.map((sheet) => ({
    ...sheet,
    front: turned(sheet.front),
    back: turned(sheet.back),
  }));
  return { ...pad, sheets };
}

/** Cards that are alike are worked out by one function, or hold one array. */
function sourceOf({ factor, wide }: CardTable): unknown {
  return factor === null ? wide?.exact : factor.data;
}

/** The ask with a slot for every lot and as many copies as there are lots: nothing stands in another's way. */
function apart(ask: FreeAsk, { lots }: SheetRoom): PlanAsk {
  const { pad } = ask;
  const none = units(0);
  const slots = lots.map((lot, at): Slot => ({
    id: `lot-${at + 1}`,
    pieces: lot.pieces.map((piece) => ({ piece, x: none, y: none, turned: false })),
    cuts: { kind: 'rest', size: pad.sheetSize },
  }));
  const sheets = pad.sheets.map((sheet) => ({ ...sheet, copies: lots.length }));
  return {
    ...ask,
    pad: { ...pad, sheets },
    scheme: { sheet: pad.sheetSize, slots, fewestSheets: slots.length, proven: false },
  };
}

/** The table with -Infinity where a design is not among those allowed. */
function only(
  allowed: readonly (readonly number[])[],
  designs: number,
  table: Float64Array,
): Float64Array {
  if (allowed.every((list) => list.length === designs)) return table;
  const may = allowed.map((list) => {
    const flags = new Uint8Array(designs);
    for (const design of list) flags[design] = 1;
    return flags;
  });
  return table.map((worth, cell) => {
    for (let at = may.length - 1, rest = cell; at >= 0; at--) {
      if (may[at]![rest % designs] === 0) return -Infinity;
      rest = Math.floor(rest / designs);
    }
    return worth;
  });
}
