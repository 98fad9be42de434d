import { toMillimetres } from '../lengths/length.ts';
import type { GuideAsk } from './ask.ts';
import { CARD_ROOM, cardMarks } from './card-marks.ts';
import type { Mark } from './drawing.ts';
import type { CardFacts, Facts } from './facts.ts';
import { chapter } from './flow.ts';
import { SIZES, SOFT } from './look.ts';
import { shortened } from './letters.ts';
import { BODY, PAGE, badge, noteBox, paragraph } from './page.ts';
import type { GuidePage } from './page.ts';
import { counted, labelsSaid } from './said.ts';

const GAP = 6;
/** Room for the words under a card. */
const UNDER = 12;
const BEFORE =
  'A photo is not a measurement. Before the first cut, hold the real papers and cardstock of a card together in daylight; if two quarrel, change the plan, not the paper.';

/** The batch at a glance: every card with its number and the sheets it takes. */
export function glancePages(ask: GuideAsk, facts: Facts): GuidePage[] {
  const intro = introduction(ask, facts);
  const top = BODY.top + intro.height + 3;
  const { columns, width, high } = gridFor(facts.cards, 231 - GAP - top);
  const rows = Math.max(1, Math.floor((231 - top) / (high + GAP)));
  const perPage = columns * rows;
  const pages: Mark[][] = [];
  for (let from = 0; from < facts.cards.length; from += perPage) {
    const cards = facts.cards.slice(from, from + perPage);
    const tiles = cards.map((card, index): Mark => ({
      kind: 'group',
      x: (index % columns) * (width + GAP),
      y: top + Math.floor(index / columns) * (high + GAP),
      marks: tile(card, width, high),
    }));
    pages.push([...intro.marks, ...tiles, ...noteBox(BEFORE, 0, 231, PAGE.width).marks]);
  }
  return chapter(ask.title, pages);
}

interface Grid {
  readonly columns: number;
  readonly width: number;
  readonly high: number;
}

/** The grid that shows all cards largest on one page; where they would be too small, more pages. */
function gridFor(cards: readonly CardFacts[], room: number): Grid {
  const tallest = Math.max(...cards.map(({ layout }) => layout.card.height / layout.card.width));
  const grids = [2, 3, 4, 5, 6].map((columns): Grid => {
    const width = (PAGE.width - (columns - 1) * GAP) / columns;
    const rows = Math.ceil(cards.length / columns);
    const high = Math.min(width * tallest + UNDER, (room + GAP) / rows - GAP);
    return { columns, width, high };
  });
  const shown = ({ width, high }: Grid): number => Math.min(width * tallest, high - UNDER);
  const best = grids.reduce((a, b) => (shown(b) > shown(a) ? b : a));
  return shown(best) >= SMALLEST ? best : { ...grids[3]!, high: grids[3]!.width * tallest + UNDER };
}

/** Pictures lower than this (mm) show too little. */
const SMALLEST = 28;

function introduction(ask: GuideAsk, facts: Facts): ReturnType<typeof paragraph> {
  const sheets = new Set(facts.slots.map(({ sheet }) => sheet.id)).size;
  const text = `${counted(facts.cards.length, 'card')} from ${counted(ask.scheme.slots.length, 'sheet')} of ${ask.pad.name} (${counted(sheets, 'design')}). Cut sheet by sheet, put the pieces of each card into its bag, then make card by card.`;
  return paragraph(text, 0, BODY.top - 3.5, PAGE.width);
}

/** A card's picture with its number; under it the sheets. */
function tile(card: CardFacts, width: number, high: number): Mark[] {
  const { layout } = card;
  const size = {
    width: toMillimetres(layout.card.width) + 2 * CARD_ROOM,
    height: toMillimetres(layout.card.height) + 2 * CARD_ROOM,
  };
  const scale = Math.min(width / size.width, (high - UNDER) / size.height);
  const paints = new Map(card.layers.map(({ layer, paint }) => [layer.id, paint]));
  const left = (width - scale * size.width) / 2;
  const under = scale * size.height;
  return [
    {
      kind: 'group',
      x: left + CARD_ROOM * scale,
      y: CARD_ROOM * scale,
      scale,
      marks: cardMarks(layout, (id) => paints.get(id)!),
    },
    ...badge(String(card.number), 4, under + 5, 3.6),
    {
      kind: 'words',
      x: 9,
      y: under + 4.4,
      text: shortened(layout.name, width - 9, SIZES.small, true),
      size: SIZES.small,
      bold: true,
    },
    {
      kind: 'words',
      x: 9,
      y: under + 8.8,
      text: shortened(sheetsSaid(card), width - 9, SIZES.small),
      size: SIZES.small,
      colour: SOFT,
    },
  ];
}

/** 'Sheets 2 and 7'. */
export function sheetsSaid(card: CardFacts): string {
  const labels = card.layers.flatMap(({ paper }) => (paper === null ? [] : [paper.sheet.label]));
  return labelsSaid([...new Set(labels)]);
}
