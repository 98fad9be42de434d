import { nameOf } from '../colour/names.ts';
import { hexFromLab } from '../colour/spaces.ts';
import type { Lab } from '../colour/lab.ts';
import type { PlacedPiece, Slot } from '../cutting/piece.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { Layer, Layout } from '../layouts/layout.ts';
import type { Sheet, Side } from '../pad/pad.ts';
import type { Choice, ChosenCard } from '../plan/plan.ts';
import { Refusal } from '../refusals/refusal.ts';
import type { GuideAsk } from './ask.ts';
import type { Paint } from './paint.ts';
import { capital } from './said.ts';
import { faceUp, swatchPlace } from './swatch-place.ts';
import type { Face } from './swatch-place.ts';

/** A layer of a card with what it is cut from. */
export interface LayerFacts {
  readonly layer: Layer;
  readonly paint: Paint;
  /** 'Sheet 3, front', the name of a cardstock, or the colour of one to buy. */
  readonly from: string;
  readonly paper: PaperFacts | null;
  readonly stock: StockFacts | null;
}

export interface PaperFacts {
  readonly slot: Slot;
  readonly placed: PlacedPiece;
  readonly sheet: Sheet;
  readonly side: Side;
  readonly face: Face;
}

/** A cardstock that she has, or has to buy. Layers of one key are cut from the same colour. */
export interface StockFacts {
  readonly key: string;
  readonly name: string;
  readonly lab: Lab;
  readonly toBuy: boolean;
}

export interface CardFacts {
  readonly number: number;
  readonly layout: Layout;
  readonly chosen: ChosenCard;
  readonly layers: readonly LayerFacts[];
}

/** A slot with the sheet that it is cut from. */
export interface SlotFacts {
  readonly slot: Slot;
  readonly sheet: Sheet;
  /** 'Sheet 3'; where the batch takes more than one of it, 'Sheet 3 (second)'. */
  readonly name: string;
  readonly up: Face;
  readonly cards: readonly number[];
}

export interface Facts {
  readonly cards: readonly CardFacts[];
  /** In the order of the pad, as she has numbered them. */
  readonly slots: readonly SlotFacts[];
}

/** Looks up everything that the pages speak of; refuses a plan that does not belong to the batch. */
export function factsOf(ask: GuideAsk): Facts {
  const ups = facesUp(ask);
  return {
    cards: ask.plan.cards.map((chosen) => cardFacts(ask, chosen, ups)),
    slots: ask.scheme.slots
      .map((slot, at) => ({
        slot,
        sheet: sheetOf(ask, ask.plan.slots[slot.id] ?? ''),
        name: nameOfSlot(ask, at),
        up: ups.get(slot.id)!,
        cards: [...new Set(slot.pieces.map(({ piece }) => piece.card))].sort((a, b) => a - b),
      }))
      .sort((a, b) => ask.pad.sheets.indexOf(a.sheet) - ask.pad.sheets.indexOf(b.sheet)),
  };
}

/** A slot is called by its sheet; copies of one sheet are told apart in the order of cutting. */
function nameOfSlot(ask: GuideAsk, at: number): string {
  const sheets = ask.scheme.slots.map(({ id }) => ask.plan.slots[id] ?? '');
  const { label } = sheetOf(ask, sheets[at]!);
  const alike = sheets.filter((sheet) => sheet === sheets[at]).length;
  const copy = sheets.slice(0, at + 1).filter((sheet) => sheet === sheets[at]).length;
  return alike === 1 ? label : `${label} (${ORDINALS[copy - 1] ?? `copy ${copy}`})`;
}

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'] as const;

/** The same for one card. */
export function cardFactsOf(ask: GuideAsk, number: number): CardFacts {
  const chosen = ask.plan.cards.find((card) => card.number === number);
  if (chosen === undefined) throw stray(`card ${number}`);
  return cardFacts(ask, chosen, facesUp(ask));
}

/** Which face of its sheet lies up while a slot is cut. */
function facesUp(ask: GuideAsk): Map<string, Face> {
  const faces = facesOf(ask);
  return new Map(
    ask.scheme.slots.map((slot) => [
      slot.id,
      ask.plan.up?.[slot.id] ??
        faceUp(slot, ({ piece }) => faces.get(`${piece.card} ${piece.layer}`) ?? 'front'),
    ]),
  );
}

/** Which face of its sheet each patterned layer shows: 'card layer' to face. */
function facesOf({ pad, plan }: GuideAsk): Map<string, Face> {
  const backs = new Set(pad.sheets.flatMap(({ back }) => (back === null ? [] : [back.id])));
  return new Map(
    plan.cards.flatMap((card) =>
      card.layers.flatMap(({ layer, choice }) =>
        choice.kind === 'paper'
          ? [[`${card.number} ${layer}`, backs.has(choice.side) ? 'back' : 'front'] as const]
          : [],
      ),
    ),
  );
}

function cardFacts(ask: GuideAsk, chosen: ChosenCard, ups: ReadonlyMap<string, Face>): CardFacts {
  const card = ask.cards.find(({ number }) => number === chosen.number);
  if (card === undefined) throw stray(`card ${chosen.number}`);
  const { layout } = card;
  const layers = layout.layers.map((layer): LayerFacts => {
    const choice = chosen.layers.find((one) => one.layer === layer.id)?.choice;
    if (choice === undefined) throw stray(`layer ${layer.id} of card ${chosen.number}`);
    return layerFacts(ask, chosen.number, layer, choice, ups);
  });
  return { number: chosen.number, layout, chosen, layers };
}

function layerFacts(
  ask: GuideAsk,
  card: number,
  layer: Layer,
  choice: Choice,
  ups: ReadonlyMap<string, Face>,
): LayerFacts {
  if (choice.kind !== 'paper') {
    const stock = stockFacts(ask, choice);
    const paint: Paint = { kind: 'colour', hex: hexFromLab(stock.lab) };
    return { layer, paint, from: stock.name, paper: null, stock };
  }
  const slot = ask.scheme.slots.find(({ id }) => id === choice.slot);
  const placed = slot?.pieces.find(({ piece }) => piece.card === card && piece.layer === layer.id);
  if (slot === undefined || placed === undefined) throw stray(`slot ${choice.slot}`);
  const sheet = sheetOf(ask, choice.sheet);
  const face: Face = sheet.back?.id === choice.side ? 'back' : 'front';
  const side = face === 'back' ? sheet.back : sheet.front;
  if (side === null) throw stray(`side ${choice.side}`);
  const paper = { slot, placed, sheet, side, face };
  const paint = paperPaint(ask, paper, ups.get(slot.id) !== face);
  return { layer, paint, from: `${sheet.label}, ${face}`, paper, stock: null };
}

function paperPaint(ask: GuideAsk, { placed, side }: PaperFacts, otherFace: boolean): Paint {
  const href = ask.picture(side.id);
  if (href === null)
    return { kind: 'colour', hex: hexFromLab(side.palette.colours[0]?.lab ?? NO_COLOUR) };
  const { sheet } = ask.scheme;
  const swatch = { width: toMillimetres(sheet.width), height: toMillimetres(sheet.height) };
  return { kind: 'paper', href, swatch, ...swatchPlace(placed, sheet, otherFace, side.pattern) };
}

const NO_COLOUR: Lab = { l: 80, a: 0, b: 0 };

function stockFacts(ask: GuideAsk, choice: Exclude<Choice, { kind: 'paper' }>): StockFacts {
  if (choice.kind === 'wanted') {
    const name = `${capital(nameOf(choice.lab).words)} cardstock`;
    return { key: `to buy ${hexFromLab(choice.lab)}`, name, lab: choice.lab, toBuy: true };
  }
  const supply = ask.supplies.find(({ id }) => id === choice.supply);
  if (supply === undefined) throw stray(`cardstock ${choice.supply}`);
  return { key: supply.id, name: supply.name, lab: supply.lab, toBuy: false };
}

function sheetOf({ pad }: GuideAsk, id: string): Sheet {
  const sheet = pad.sheets.find((one) => one.id === id);
  if (sheet === undefined) throw stray(`sheet ${id}`);
  return sheet;
}

function stray(what: string): Refusal {
  return new Refusal({
    kind: 'not-found',
    field: 'plan',
    received: what,
    message: `The plan speaks of ${what}, which is no longer there`,
    mend: 'Plan the cards again, then open the guide.',
  });
}
