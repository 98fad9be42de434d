import { worthKeeping } from '../cutting/leftovers.ts';
import type { Slot } from '../cutting/piece.ts';
import type { GuideAsk } from './ask.ts';
import type { Facts } from './facts.ts';
import { SIZES, SOFT } from './look.ts';
import { COLUMN, under } from './flow.ts';
import { PAGE, headed, paragraph } from './page.ts';
import { isSpared } from './parts-words.ts';
import type { Block } from './page.ts';
import { listed, sizeSaid } from './said.ts';
import type { StockNeed } from './stock-needs.ts';

const INTRO =
  'These parts are left when all is cut. Keep them flat, with the sheet’s name on the back, for the next batch. Smaller scraps are not listed.';

const HEAD = 'Left over, to keep';
const GAP = 1.5;

/** What is left of the sheets and worth keeping, as blocks of a column under its head; none when nothing is. */
export function leftBlocks(ask: GuideAsk, facts: Facts, needs: readonly StockNeed[]): Block[] {
  const [first, ...others] = leftRows(ask, facts, needs);
  if (first === undefined) return [];
  return [headed(HEAD, under(intro(COLUMN), first, 2)), ...others];
}

/** The same as one block, in two columns; null when nothing is left. */
export function leftBlock(ask: GuideAsk, facts: Facts, needs: readonly StockNeed[]): Block | null {
  const rows = leftRows(ask, facts, needs);
  if (rows.length === 0) return null;
  const half = Math.ceil(rows.length / 2);
  const [left, right] = [stacked(rows.slice(0, half)), stacked(rows.slice(half))];
  const columns: Block = {
    marks: [...left.marks, { kind: 'group', x: PAGE.width - COLUMN, y: 0, marks: right.marks }],
    height: Math.max(left.height, right.height),
  };
  return headed(HEAD, under(intro(PAGE.width), columns, 2));
}

function intro(width: number): Block {
  return paragraph(INTRO, 0, 0, width, { size: SIZES.note, colour: SOFT });
}

function leftRows(ask: GuideAsk, facts: Facts, needs: readonly StockNeed[]): Block[] {
  const papers = facts.slots
    .filter(({ slot }) => !isSpared(ask, slot))
    .flatMap(({ slot, name }) => ofSheets(ask, name, [slot]));
  const stocks = needs.flatMap(({ stock, scheme }) =>
    scheme === null ? [] : ofSheets(ask, stock.name, scheme.slots),
  );
  return [...papers, ...stocks];
}

function stacked(blocks: readonly Block[]): Block {
  return blocks.reduce((all, block) => (all.height === 0 ? block : under(all, block, GAP)), {
    marks: [],
    height: 0,
  });
}

function ofSheets({ ruler }: GuideAsk, from: string, slots: readonly Slot[]): Block[] {
  const sizes = slots.flatMap(worthKeeping).map((size) => sizeSaid(size, ruler));
  if (sizes.length === 0) return [];
  const head = paragraph(from, 0, 0, 34, { size: SIZES.note, bold: true });
  const body = paragraph(`${listed(timesSaid(sizes))}.`, 37, 0, COLUMN - 37, {
    size: SIZES.note,
  });
  const height = Math.max(head.height, body.height) + 0.8;
  return [{ marks: [...head.marks, ...body.marks], height }];
}

/** Equal sizes said once: '3 times 1 x 2 in'. */
export function timesSaid(sizes: readonly string[]): string[] {
  const counts = new Map<string, number>();
  for (const size of sizes) counts.set(size, (counts.get(size) ?? 0) + 1);
  return [...counts].map(([size, count]) => (count === 1 ? size : `${count} times ${size}`));
}
