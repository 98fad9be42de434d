import { hexFromLab } from '../colour/spaces.ts';
import type { GuideAsk } from './ask.ts';
import { rectangle } from './drawing.ts';
import { COLUMN } from './flow.ts';
import { HAIR, SIZES } from './look.ts';
import { paragraph } from './page.ts';
import type { Block } from './page.ts';
import { stockRows } from './stock-needs.ts';
import type { StockNeed } from './stock-needs.ts';
import { table } from './table.ts';

/** The pieces of each cardstock, colour by colour. */
export function stockListBlocks(ask: GuideAsk, needs: readonly StockNeed[]): Block[] {
  return needs.flatMap((need) => needBlocks(ask, need));
}

/** A long list goes on in further blocks under the same colour. */
function needBlocks(ask: GuideAsk, need: StockNeed): Block[] {
  const rows = stockRows(ask, need).map(({ count, size, use }) => [String(count), size, use]);
  const blocks: Block[] = [];
  for (let from = 0; from < rows.length; from += ROWS) {
    const title = `${need.stock.name}${from === 0 ? '' : ', continued'}`;
    blocks.push(needBlock(need, title, rows.slice(from, from + ROWS)));
  }
  return blocks;
}

/** Rows of pieces under one head. */
const ROWS = 16;

function needBlock({ stock }: StockNeed, title: string, rows: readonly string[][]): Block {
  const head = paragraph(title, 10, 0.6, COLUMN - 10, { bold: true });
  const top = Math.max(head.height, 6) + 1.2;
  const columns = [
    { head: 'Pieces', width: 12, bold: true },
    { head: 'Width x height', width: 30, bold: true },
    { head: 'For', width: COLUMN - 42 },
  ];
  const body = table(columns, rows, 0, top, SIZES.note);
  return {
    marks: [
      {
        kind: 'area',
        corners: rectangle(0, 0, 7.5, 6),
        fill: hexFromLab(stock.lab),
        edge: { width: 0.2, colour: HAIR },
      },
      ...head.marks,
      ...body.marks,
    ],
    height: top + body.height + 2.5,
  };
}
