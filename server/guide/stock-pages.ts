import { hexFromLab } from '../colour/spaces.ts';
import type { GuideAsk } from './ask.ts';
import { rectangle } from './drawing.ts';
import type { Mark } from './drawing.ts';
import { chapter, flow } from './flow.ts';
import { HAIR, SIZES } from './look.ts';
import { BODY, PAGE, noteBox, paragraph } from './page.ts';
import type { Block, GuidePage } from './page.ts';
import { counted, sizeSaid } from './said.ts';
import { stepBlock } from './step-block.ts';
import { stepWords } from './step-words.ts';
import { stockRows } from './stock-needs.ts';
import type { StockNeed } from './stock-needs.ts';
import { sizeOf, stockSheetMarks, stockSheetSaid, stockSheets } from './stock-sheets.ts';
import type { StockSheet } from './stock-sheets.ts';
import { table } from './table.ts';

/** The most that a sheet's picture takes, so that two sheets stand on a page; one with many cuts takes more. */
const PICTURE = { width: 76, height: 99 } as const;
const CROWDED = { cuts: 9, width: 108, height: 140 } as const;
const SHEETS = { top: BODY.top - 3, bottom: BODY.bottom + 5 } as const;
const CAUTION =
  'Keep fingers behind the guard and the blade covered when you put the trimmer down. A fresh blade cuts clean edges and needs less force; follow the maker’s instructions.';

/** The cardstock: a list of the colours, then the cuts of every sheet. */
export function stockPages(ask: GuideAsk, needs: readonly StockNeed[]): GuidePage[] {
  if (needs.length === 0) return [];
  return [...listPages(ask, needs), ...sheetPages(ask, needs)];
}

function listPages(ask: GuideAsk, needs: readonly StockNeed[]): GuidePage[] {
  const blocks = needs.flatMap((need) => needBlocks(ask, need));
  const pages = flow(blocks, { top: BODY.top - 2, bottom: BODY.bottom - 14 }, 6);
  pages.at(-1)!.push(...noteBox(CAUTION, 0, 231, PAGE.width).marks);
  return chapter('Cardstock', pages);
}

/** A colour with its pieces; a long list goes on in further blocks under the same colour. */
function needBlocks(ask: GuideAsk, need: StockNeed): Block[] {
  const sheets =
    need.scheme === null
      ? 'a piece is larger than the usual sheets; ask for a larger one'
      : `${counted(need.scheme.slots.length, 'sheet')} of ${sizeSaid(need.scheme.sheet, ask.ruler)}`;
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
  const head = paragraph(title, 13, 0, PAGE.width - 13, { bold: true });
  const columns = [
    { head: 'Pieces', width: 16, bold: true },
    { head: 'Width x height', width: 52, bold: true },
    { head: 'For', width: PAGE.width - 81 },
  ];
  const body = table(columns, rows, 13, head.height + 1, SIZES.small * 1.1);
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
    height: head.height + 1 + body.height,
  };
}

/** The cuts of each sheet of cardstock, one under the other; sheets that are cut alike are drawn once. */
function sheetPages(ask: GuideAsk, needs: readonly StockNeed[]): GuidePage[] {
  const blocks = stockSheets(needs).flatMap((sheet) => sheetBlocks(ask, sheet));
  if (blocks.length === 0) return [];
  return chapter('Cardstock, sheet by sheet', flow(blocks, SHEETS, 6));
}

/** A sheet's picture with its cuts beside it; cuts beyond the page go on as a block of their own. */
function sheetBlocks(ask: GuideAsk, sheet: StockSheet): Block[] {
  const { slot, steps } = sheet;
  const size = sizeOf(sheet.scheme);
  const most = steps.length > CROWDED.cuts ? CROWDED : PICTURE;
  const scale = Math.min(most.width / size.width, most.height / size.height);
  const picture = stockSheetMarks(sheet, scale);
  const laying = paragraph(stockSheetSaid(sheet), 0, 0, PAGE.width, { bold: true });
  const top = laying.height + 2;
  const x = scale * size.width + 6;
  const words = stepWords(steps, slot, ask.ruler).map((one) => stepBlock(one, PAGE.width - x));
  const columns = flow(words, { x, top, again: 0, bottom: SHEETS.bottom - SHEETS.top });
  const heads: Mark[] = [...laying.marks, { kind: 'group', x: 0.5, y: top, marks: picture }];
  return columns.map((marks, index) => {
    const low = lowest(marks, words);
    return index === 0
      ? { marks: [...heads, ...marks], height: Math.max(low, top + scale * size.height) }
      : { marks, height: low };
  });
}

/** Where a column of steps ends. */
function lowest(marks: readonly Mark[], blocks: readonly Block[]): number {
  return Math.max(
    0,
    ...marks.map((mark) => {
      const block = blocks.find((one) => mark.kind === 'group' && one.marks === mark.marks);
      return block === undefined || mark.kind !== 'group' ? 0 : mark.y + block.height;
    }),
  );
}
