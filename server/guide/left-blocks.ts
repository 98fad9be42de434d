import { worthKeeping } from '../cutting/leftovers.ts';
import type { Slot } from '../cutting/piece.ts';
import type { GuideAsk } from './ask.ts';
import type { Facts } from './facts.ts';
import { SIZES } from './look.ts';
import { COLUMN, under } from './flow.ts';
import { headed, paragraph } from './page.ts';
import { isSpared } from './parts-words.ts';
import type { Block } from './page.ts';
import { listed, sizeSaid } from './said.ts';
import type { StockNeed } from './stock-needs.ts';

const INTRO =
  'These parts are left when all is cut. Keep them flat, with the sheet’s name on the back, for the next batch. Smaller scraps are not listed.';

/** What is left of the sheets and worth keeping; nothing when nothing is. */
export function leftBlocks(ask: GuideAsk, facts: Facts, needs: readonly StockNeed[]): Block[] {
  const papers = facts.slots
    .filter(({ slot }) => !isSpared(ask, slot))
    .flatMap(({ slot, name }) => leftBlock(ask, name, [slot]));
  const stocks = needs.flatMap(({ stock, scheme }) =>
    scheme === null ? [] : leftBlock(ask, stock.name, scheme.slots),
  );
  const blocks = [...papers, ...stocks];
  if (blocks.length === 0) return [];
  const intro = paragraph(INTRO, 0, 0, COLUMN, { size: SIZES.note });
  return together([intro, ...blocks]).map((block, at) =>
    headed(at === 0 ? HEAD : `${HEAD}, continued`, block),
  );
}

const HEAD = 'Left over, to keep';
/** A list goes on under a head of its own where it is longer than this (mm), about a column: two heads in one column read as two lists. */
const LONGEST = 190;
/** What is lower than this (mm), a line or two, gets no head of its own. */
const FEW = 25;
const GAP = 1.5;

/** Blocks stacked into as few as their height allows, so that none stands away from its head. */
function together(blocks: readonly Block[]): Block[] {
  const stacks: Block[] = [];
  for (const { marks, height } of blocks) {
    const last = stacks.at(-1);
    if (last === undefined || last.height + GAP + height > LONGEST) stacks.push({ marks, height });
    else stacks[stacks.length - 1] = under(last, { marks, height }, GAP);
  }
  const [before, last] = stacks.slice(-2);
  return last !== undefined && last.height < FEW
    ? [...stacks.slice(0, -2), under(before!, last, GAP)]
    : stacks;
}

function leftBlock({ ruler }: GuideAsk, from: string, slots: readonly Slot[]): Block[] {
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
