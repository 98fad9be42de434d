import { hexFromLab } from '../colour/spaces.ts';
import { toMillimetres } from '../lengths/length.ts';
import type { GuideAsk } from './ask.ts';
import { CAUTIONS } from './cautions.ts';
import type { CardFacts, Facts, LayerFacts } from './facts.ts';
import { factsOf } from './facts.ts';
import type { Extent } from './drawing.ts';
import { elementWords } from './element-words.ts';
import type { ElementWords } from './element-words.ts';
import { envelopeSaid, foldSaid } from './fold-words.ts';
import { greetingSaid } from './greeting-words.ts';
import { sheetsSaid } from './glance-page.ts';
import { layerNote, layerSizeSaid } from './layer-words.ts';
import { layerOf, lengthSaid } from './said.ts';
import { sheetsToBuySaid } from './shopping-blocks.ts';
import { purchases } from './stock-purchases.ts';
import type { SheetOnScreen } from './sheet-on-screen.ts';
import { stockSizeSaid } from './stock-size.ts';
import { stockNeeds, stockRows } from './stock-needs.ts';
import type { StockNeed, StockRow } from './stock-needs.ts';
import {
  DOTTED,
  isScored,
  stockSheetDrawing,
  stockSheetOnScreen,
  stockSheetSaid,
  stockSheets,
} from './stock-sheets.ts';
import type { StockSheet } from './stock-sheets.ts';
import { whatItTakes } from './what-it-takes.ts';
import type { Taken, WhatItTakes } from './what-it-takes.ts';

/** A cardstock with the pieces cut from it and the cuts of its sheets. */
export interface StockOnScreen {
  readonly name: string;
  readonly hex: string;
  readonly toBuy: boolean;
  /** Sheets that it takes and their size; null when a piece is larger than the usual sheets. */
  readonly takes: { readonly sheets: number; readonly size: string } | null;
  readonly pieces: StockRow[];
  readonly sheets: StockSheetOnScreen[];
}

export interface StockSheetOnScreen extends SheetOnScreen {
  readonly id: string;
  /** Which of the sheets of its cardstock are cut with it, from 1. */
  readonly numbers: number[];
  readonly laying: string;
}

/** A card as it is made: its base with the scores, then its layers in the order of gluing. */
export interface CardOnScreen {
  readonly number: number;
  readonly name: string;
  readonly why: string;
  readonly base: string;
  /** Where the flat base is scored, measured from that edge; none for a card that is not folded. */
  readonly scores: {
    readonly from: 'left' | 'top';
    readonly at: string[];
    /** The flat base and where its scores lie, in mm. */
    readonly flat: Extent;
    readonly places: number[];
  };
  readonly greeting: string;
  readonly post: string;
  readonly layers: LayerOnScreen[];
  /** What is stamped on it or cut by a die. */
  readonly elements: ElementWords[];
  /** What the label of its bag says. */
  readonly label: { readonly patterned: number; readonly plain: number; readonly sheets: string };
}

export interface LayerOnScreen {
  readonly number: number;
  readonly layer: string;
  readonly name: string;
  readonly size: string;
  readonly from: string;
  /** The side that shows; null for plain cardstock. */
  readonly side: string | null;
  /** Colour of the cardstock; null for a patterned paper. */
  readonly hex: string | null;
  readonly note: string;
}

export interface PurchaseOnScreen {
  readonly name: string;
  readonly kind: 'cardstock' | 'ink';
  readonly hex: string;
  readonly cards: number[];
  readonly squareCentimetres: number;
  /** '2 more sheets of 8 1/2 x 11 in: 3 are needed and 1 is left'; '' for an ink. */
  readonly sheets: string;
}

/** A cardstock or an ink that it takes. */
export interface TakenOnScreen extends Omit<Taken, 'lab'> {
  readonly hex: string;
}

export interface GuideOnScreen {
  readonly cautions: string[];
  readonly takes: { readonly of: TakenOnScreen[]; readonly said: string };
  readonly cardstock: StockOnScreen[];
  readonly cards: CardOnScreen[];
  readonly shopping: PurchaseOnScreen[];
}

/** What the printed guide says beside the patterned sheets, part by part, for a screen at the table. */
export function guideOnScreen(ask: GuideAsk): GuideOnScreen {
  const facts = factsOf(ask);
  const needs = stockNeeds(ask, facts);
  const sheets = stockSheets(needs, ask.cards);
  return {
    cautions: CAUTIONS.map(({ text }) => text),
    takes: takesOnScreen(whatItTakes(ask, facts, needs)),
    cardstock: needs.map((need) => stockOnScreen(ask, need, sheets)),
    cards: facts.cards.map((card) => cardOnScreen(ask, card)),
    shopping: purchases(ask, needs).map((purchase) => ({
      name: purchase.name,
      kind: purchase.kind,
      hex: hexFromLab(purchase.lab),
      cards: [...purchase.cards],
      squareCentimetres: Math.ceil(purchase.area / 100),
      sheets: sheetsToBuySaid(ask, purchase),
    })),
  };
}

function takesOnScreen({ taken, said }: WhatItTakes): GuideOnScreen['takes'] {
  return { of: taken.map(({ lab, ...one }) => ({ ...one, hex: hexFromLab(lab) })), said };
}

/** A cardstock sheet with its numbered cuts, as an SVG; null when the plan has no such sheet. */
export function stockDrawing(ask: GuideAsk, id: string): string | null {
  const facts: Facts = factsOf(ask);
  const sheet = stockSheets(stockNeeds(ask, facts), ask.cards).find((one) => one.id === id);
  return sheet === undefined ? null : stockSheetDrawing(sheet);
}

function stockOnScreen(
  ask: GuideAsk,
  need: StockNeed,
  sheets: readonly StockSheet[],
): StockOnScreen {
  const { stock, scheme } = need;
  return {
    name: stock.name,
    hex: hexFromLab(stock.lab),
    toBuy: stock.toBuy,
    takes:
      scheme === null
        ? null
        : { sheets: scheme.slots.length, size: stockSizeSaid(scheme.sheet, ask.ruler) },
    pieces: stockRows(ask, need),
    sheets: sheets
      .filter((one) => one.stock.key === stock.key)
      .map((one) => ({
        id: one.id,
        numbers: [...one.numbers],
        laying: `${stockSheetSaid(one, ask.ruler)}${isScored(one) ? ` ${DOTTED}` : ''}`,
        ...stockSheetOnScreen(one, ask.ruler),
      })),
  };
}

function cardOnScreen(ask: GuideAsk, card: CardFacts): CardOnScreen {
  const { number, layout, chosen, layers } = card;
  const patterned = layers.filter(({ paper }) => paper !== null).length;
  return {
    number,
    name: layout.name,
    why: chosen.why,
    base: foldSaid(layout, ask.ruler),
    scores: {
      from: layout.fold.scoreFrom,
      at: layout.fold.scores.map((score) => lengthSaid(score, ask.ruler)),
      flat: {
        width: toMillimetres(layout.fold.flat.width),
        height: toMillimetres(layout.fold.flat.height),
      },
      places: layout.fold.scores.map(toMillimetres),
    },
    greeting: greetingSaid(ask, card),
    post: envelopeSaid(layout),
    layers: layers.map((layer, index) => layerOnScreen(ask, card, layer, index)),
    elements: elementWords(layout, ask.ruler),
    label: { patterned, plain: layers.length - patterned, sheets: sheetsSaid(card) },
  };
}

function layerOnScreen(
  { ruler }: GuideAsk,
  card: CardFacts,
  facts: LayerFacts,
  index: number,
): LayerOnScreen {
  const { layer, from, paper, stock } = facts;
  return {
    number: index + 1,
    layer: layer.id,
    name: layerOf(card.layout, layer.id),
    size: layerSizeSaid(card, layer, ruler),
    from,
    side: paper?.side.id ?? null,
    hex: stock === null ? null : hexFromLab(stock.lab),
    note: layerNote(card, facts, ruler),
  };
}
