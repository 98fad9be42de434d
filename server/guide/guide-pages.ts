import type { GuideAsk } from './ask.ts';
import { cardPages, cardPagesWith } from './card-pages.ts';
import { factsOf } from './facts.ts';
import { glancePages } from './glance-page.ts';
import { labelPages } from './label-pages.ts';
import { leftBlock, leftBlocks } from './left-blocks.ts';
import { LEFT } from './lists-pages.ts';
import { openingPages } from './opening-pages.ts';
import { framed } from './page.ts';
import type { GuidePage } from './page.ts';
import { slotPages } from './slot-pages.ts';
import { stockNeeds } from './stock-needs.ts';
import { stockSheetPages, stockSheetPagesWith } from './stock-pages.ts';

export type { GuideAsk } from './ask.ts';
export type { GuidePage } from './page.ts';

/**
 * The guide that she cuts from, page by page, as marks in mm: the batch at a glance, the sheets with
 * their numbers and the table of sheets against cards, all cautions with the ruler, the lists (what it takes, what
 * to buy, all pieces), the papers and the cardstock sheet by sheet, what is left over, card by card, labels.
 *
 * Refuses     a plan that speaks of sheets, cards or cardstock that are no longer there.
 */
export function guidePages(ask: GuideAsk): GuidePage[] {
  const facts = factsOf(ask);
  const needs = stockNeeds(ask, facts);
  const block = leftBlock(ask, facts, needs);
  const left = block === null ? null : { name: LEFT, block };
  // What is left is told once all is cut, where there is room for it; else with the lists, not on a page of its own.
  const stock = left && stockSheetPagesWith(ask, needs, left);
  const cards = left && stock === null ? cardPagesWith(ask, facts, left) : null;
  const listed = stock === null && cards === null ? leftBlocks(ask, facts, needs) : [];
  const pages = [
    ...glancePages(ask, facts),
    ...openingPages(ask, facts, needs, listed),
    ...slotPages(ask, facts),
    ...(stock ?? stockSheetPages(ask, needs)),
    ...(cards ?? cardPages(ask, facts)),
    ...labelPages(ask, facts),
  ];
  return framed(pages, `${ask.title}, cut from ${ask.pad.name}`);
}
