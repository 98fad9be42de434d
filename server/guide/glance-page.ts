import { toMillimetres } from '../lengths/length.ts';
import type { GuideAsk } from './ask.ts';
import { CARD_ROOM, cardMarks } from './card-marks.ts';
import type { Mark } from './drawing.ts';
import type { CardFacts, Facts } from './facts.ts';
import { chapter } from './flow.ts';
import { INK, SIZES, SOFT } from './look.ts';
import { linesOf } from './letters.ts';
import { BODY, PAGE, badge, noteBox, paragraph } from './page.ts';
import type { GuidePage } from './page.ts';
import { plainNote } from './plain-face.ts';
import { counted, labelsSaid } from './said.ts';

const GAP = 6;
/** From one line of the words under a card to the next. */
const LINE = 4.4;
const BEFORE =
  'A photo is not a measurement. Before the first cut, hold the real papers and cardstock of a card together in daylight; if two quarrel, change the plan, not the paper.';

/** The batch at a glance: every card with its number and the sheets it takes. */
export function glancePages(ask: GuideAsk, facts: Facts): GuidePage[] {
  const intro = introduction(ask, facts);
  const top = BODY.top + intro.height + 3;
  const { columns, width, high, under } = gridFor(facts.cards, 231 - GAP - top);
  const rows = Math.max(1, Math.floor((231 - top) / (high + GAP)));
  const perPage = columns * rows;
  const pages: Mark[][] = [];
  for (let from = 0; from < facts.cards.length; from += perPage) {
    const cards = facts.cards.slice(from, from + perPage);
    const tiles = cards.map((card, index): Mark => ({
      kind: 'group',
      x: (index % columns) * (width + GAP),
      y: top + Math.floor(index / columns) * (high + GAP),
      marks: tile(card, width, high - under),
    }));
    pages.push([...intro.marks, ...tiles, ...noteBox(BEFORE, 0, 231, PAGE.width).marks]);
  }
  return chapter(ask.title, pages);
}

interface Grid {
  readonly columns: number;
  readonly width: number;
  readonly high: number;
  /** Room for the words under a card. */
  readonly under: number;
}

/** The grid that shows all cards largest on one page; where they would be too small, more pages. */
function gridFor(cards: readonly CardFacts[], room: number): Grid {
  const tallest = Math.max(...cards.map(({ layout }) => layout.card.height / layout.card.width));
  const grids = [2, 3, 4, 5, 6].map((columns): Grid => {
    const width = (PAGE.width - (columns - 1) * GAP) / columns;
    const rows = Math.ceil(cards.length / columns);
    const under = Math.max(...cards.map((card) => underHigh(card, width)));
    const high = Math.min(width * tallest + under, (room + GAP) / rows - GAP);
    return { columns, width, high, under };
  });
  const shown = ({ width, high, under }: Grid): number => Math.min(width * tallest, high - under);
  const best = grids.reduce((a, b) => (shown(b) > shown(a) ? b : a));
  return shown(best) >= SMALLEST
    ? best
    : { ...grids[3]!, high: grids[3]!.width * tallest + grids[3]!.under };
}

/** Pictures lower than this (mm) show too little. */
const SMALLEST = 28;

function introduction(ask: GuideAsk, facts: Facts): ReturnType<typeof paragraph> {
  const sheets = new Set(facts.slots.map(({ sheet }) => sheet.id)).size;
  const text = `${counted(facts.cards.length, 'card')} from ${counted(ask.scheme.slots.length, 'sheet')} of ${ask.pad.name} (${counted(sheets, 'design')}). Number your sheets, cut sheet by sheet, put the pieces of each card into its bag, then make card by card.`;
  const plain = plainNote(ask, facts);
  return paragraph(plain === null ? text : `${text} ${plain}`, 0, BODY.top - 3.5, PAGE.width);
}

/** What stands under a card, line by line: its name, then its sheets. */
function wordsUnder(card: CardFacts, width: number): { text: string; bold: boolean }[] {
  const broken = (text: string, bold: boolean): { text: string; bold: boolean }[] =>
    linesOf(text, width - NUMBER, SIZES.small, bold).map((line) => ({ text: line, bold }));
  return [...broken(card.layout.name, true), ...broken(sheetsSaid(card), false)];
}

function underHigh(card: CardFacts, width: number): number {
  return Math.max(2, wordsUnder(card, width).length) * LINE + 3.2;
}

/** Room for the number of a card, left of its words. */
const NUMBER = 9;

/** A card's picture, so high at most, with its number; under it the sheets. */
function tile(card: CardFacts, width: number, high: number): Mark[] {
  const { layout } = card;
  const size = {
    width: toMillimetres(layout.card.width) + 2 * CARD_ROOM,
    height: toMillimetres(layout.card.height) + 2 * CARD_ROOM,
  };
  const scale = Math.min(width / size.width, high / size.height);
  const paints = new Map(card.layers.map(({ layer, paint }) => [layer.id, paint]));
  const left = (width - scale * size.width) / 2;
  const below = scale * size.height;
  return [
    {
      kind: 'group',
      x: left + CARD_ROOM * scale,
      y: CARD_ROOM * scale,
      scale,
      marks: cardMarks(layout, (id) => paints.get(id)!),
    },
    ...badge(String(card.number), 4, below + 5, 3.6),
    ...wordsUnder(card, width).map(({ text, bold }, line): Mark => ({
      kind: 'words',
      x: NUMBER,
      y: below + (line + 1) * LINE,
      text,
      size: SIZES.small,
      bold,
      colour: bold ? INK : SOFT,
    })),
  ];
}

/** 'Sheets 2 and 7', by their numbers. */
export function sheetsSaid(card: CardFacts): string {
  const labels = card.layers.flatMap(({ paper }) => (paper === null ? [] : [paper.sheet.label]));
  return labelsSaid([...new Set(labels)].sort(byNumber));
}

function byNumber(a: string, b: string): number {
  return a.localeCompare(b, 'en', { numeric: true });
}
