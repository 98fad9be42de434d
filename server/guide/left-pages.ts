import { worthKeeping } from '../cutting/leftovers.ts';
import type { Slot } from '../cutting/piece.ts';
import type { GuideAsk } from './ask.ts';
import type { Facts } from './facts.ts';
import { chapter, flow } from './flow.ts';
import { BODY, PAGE, paragraph } from './page.ts';
import type { Block, GuidePage } from './page.ts';
import { listed, sizeSaid } from './said.ts';
import type { StockNeed } from './stock-needs.ts';

const INTRO =
  'These parts are left when all is cut. Keep them flat, with the sheet’s name on the back, for the next batch. Smaller scraps are not listed.';

/** What is left of the sheets and worth keeping; no page when nothing is. */
export function leftPages(ask: GuideAsk, facts: Facts, needs: readonly StockNeed[]): GuidePage[] {
  const papers = facts.slots.flatMap(({ slot, sheet }) => leftBlock(ask, sheet.label, [slot]));
  const stocks = needs.flatMap(({ stock, scheme }) =>
    scheme === null ? [] : leftBlock(ask, stock.name, scheme.slots),
  );
  const blocks = [...papers, ...stocks];
  if (blocks.length === 0) return [];
  const intro = paragraph(INTRO, 0, 0, PAGE.width);
  const place = { top: BODY.top - 2, bottom: BODY.bottom };
  return chapter('Left over, to keep', flow([intro, ...blocks], place, 4));
}

function leftBlock({ ruler }: GuideAsk, from: string, slots: readonly Slot[]): Block[] {
  const sizes = slots.flatMap(worthKeeping).map((size) => sizeSaid(size, ruler));
  if (sizes.length === 0) return [];
  const head = paragraph(from, 0, 0, 62, { bold: true });
  const body = paragraph(`${listed(timesSaid(sizes))}.`, 66, 0, PAGE.width - 66);
  return [{ marks: [...head.marks, ...body.marks], height: Math.max(head.height, body.height) }];
}

/** Equal sizes said once: '3 times 1 x 2 in'. */
export function timesSaid(sizes: readonly string[]): string[] {
  const counts = new Map<string, number>();
  for (const size of sizes) counts.set(size, (counts.get(size) ?? 0) + 1);
  return [...counts].map(([size, count]) => (count === 1 ? size : `${count} times ${size}`));
}
