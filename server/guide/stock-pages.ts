import { hexFromLab } from '../colour/spaces.ts';
import type { GuideAsk } from './ask.ts';
import type { Facts } from './facts.ts';
import { rectangle } from './drawing.ts';
import { COLUMN, chapter, flowInTwo } from './flow.ts';
import { leftBlocks } from './left-blocks.ts';
import { HAIR, SIZES } from './look.ts';
import { BODY, bladeReminder, drawingReminder, paragraph } from './page.ts';
import type { Block, GuidePage } from './page.ts';
import { counted } from './said.ts';
import { shoppingBlocks } from './shopping-blocks.ts';
import { fewestPages, setDown } from './fewest-pages.ts';
import { sheetWays, smallestOf } from './sheet-block.ts';
import type { SheetAsk } from './sheet-block.ts';
import { stepWords } from './step-words.ts';
import { stockSizeSaid } from './stock-size.ts';
import { stockRows } from './stock-needs.ts';
import type { StockNeed } from './stock-needs.ts';
import {
  DOTTED,
  PLAIN,
  isScored,
  sizeOf,
  stockSheetMarks,
  stockSheetSaid,
  stockSheets,
} from './stock-sheets.ts';
import type { StockSheet } from './stock-sheets.ts';
import { table } from './table.ts';

const SHEETS = { top: BODY.top - 0.5, bottom: BODY.bottom + 6 } as const;
const GAP = 5;
const ROOM = SHEETS.bottom - SHEETS.top;
const PICTURE = { width: 108, height: 140 } as const;

/** What the batch takes beside its papers: cardstock by colour, what to buy, and what will be left over. */
export function stockListPages(
  ask: GuideAsk,
  facts: Facts,
  needs: readonly StockNeed[],
): GuidePage[] {
  const blocks = [
    ...needs.flatMap((need) => needBlocks(ask, need)),
    ...shoppingBlocks(ask, needs),
    ...leftBlocks(ask, facts, needs),
  ];
  if (blocks.length === 0) return [];
  return chapter(
    'Cardstock',
    flowInTwo(blocks, { top: BODY.top - 2, bottom: BODY.bottom + 7 }, 1.5),
  );
}

/** A colour with its pieces; a long list goes on in further blocks under the same colour. */
function needBlocks(ask: GuideAsk, need: StockNeed): Block[] {
  const sheets =
    need.scheme === null
      ? 'a piece is larger than the usual sheets; ask for a larger one'
      : `${counted(need.scheme.slots.length, 'sheet')} of ${stockSizeSaid(need.scheme.sheet, ask.ruler)}`;
  const rows = stockRows(ask, need).map(({ count, size, use }) => [String(count), size, use]);
  const blocks: Block[] = [];
  for (let from = 0; from < rows.length; from += ROWS) {
    const title = from === 0 ? `${need.stock.name}: ${sheets}` : `${need.stock.name}, continued`;
    blocks.push(needBlock(need, title, rows.slice(from, from + ROWS)));
  }
  return blocks;
}

/** Rows of pieces under one head. */
const ROWS = 16;

function needBlock({ stock }: StockNeed, title: string, rows: readonly string[][]): Block {
  const head = paragraph(title, 11, 0, COLUMN - 11, { bold: true });
  const columns = [
    { head: 'Pieces', width: 12, bold: true },
    { head: 'Width x height', width: 27.5, bold: true },
    { head: 'For', width: COLUMN - 50.5 },
  ];
  const body = table(columns, rows, 11, head.height + 1, SIZES.note);
  return {
    marks: [
      {
        kind: 'area',
        corners: rectangle(0, 0.5, 9, 9),
        fill: hexFromLab(stock.lab),
        edge: { width: 0.2, colour: HAIR },
      },
      ...head.marks,
      ...body.marks,
    ],
    height: head.height + 1 + body.height + 2.5,
  };
}

/** The cuts of each sheet of cardstock; sheets that are cut alike are drawn once. */
export function stockSheetPages(ask: GuideAsk, needs: readonly StockNeed[]): GuidePage[] {
  const sheets = stockSheets(needs, ask.cards);
  const ways = sheets.flatMap((sheet) =>
    sheetWays(sheetOf(ask, sheet), { picture: PICTURE, room: ROOM }),
  );
  const dots = sheets.some(isScored) ? DOTTED : '';
  const pages = fewestPages(ways, ROOM, GAP).map((page) => [
    bladeReminder(),
    drawingReminder(dots),
    ...setDown(page, SHEETS.top, ROOM, GAP),
  ]);
  return chapter('Cardstock, sheet by sheet', pages);
}

function sheetOf({ ruler }: GuideAsk, sheet: StockSheet): SheetAsk {
  return {
    title: stockSheetSaid(sheet, ruler),
    draw: (scale) => stockSheetMarks(sheet, scale),
    sheet: sizeOf(sheet.scheme),
    smallest: smallestOf(sheet.slot),
    steps: stepWords(sheet.steps, sheet.slot, ruler, PLAIN),
  };
}
