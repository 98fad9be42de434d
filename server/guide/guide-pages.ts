import type { GuideAsk } from './ask.ts';
import { classPages } from './class-pages.ts';
import { beginPages } from './begin-page.ts';
import { cardPages, cardPagesWith } from './card-pages.ts';
import { factsOf } from './facts.ts';
import { glancePages } from './glance-page.ts';
import { labelPages } from './label-pages.ts';
import { leftBlock, leftBlocks } from './left-blocks.ts';
import { LEFT, listsPages } from './lists-pages.ts';
import { framed } from './page.ts';
import type { GuidePage } from './page.ts';
import { numberPages } from './number-pages.ts';
import { slotPages } from './slot-pages.ts';
import { stockNeeds } from './stock-needs.ts';
import { stockSheetPages } from './stock-pages.ts';

export type { GuideAsk } from './ask.ts';
export type { GuidePage } from './page.ts';

/**
 * The guide that she cuts from, page by page, as marks in mm: the batch at a glance, the sheets with
 * their numbers, all cautions with the ruler and the table of sheets against cards, the lists (what it takes, what
 * to buy, all pieces), the papers and the cardstock sheet by sheet, card by card, what is left over, labels.
 *
 * Refuses     a plan that speaks of sheets, cards or cardstock that are no longer there.
 */
export function guidePages(ask: GuideAsk): GuidePage[] {
  const facts = factsOf(ask);
  const needs = stockNeeds(ask, facts);
  const left = leftBlock(ask, facts, needs);
  // Told when all is cut, at the end of the cards; where there is no room among the lists, not on a page of its own.
  const last = left === null ? null : cardPagesWith(ask, facts, { name: LEFT, block: left });
  const pages = [
    ...glancePages(ask, facts),
    ...numberPages(ask, facts),
    ...classPages(ask, facts, needs),
    ...beginPages(ask, facts),
    ...listsPages(ask, facts, needs, last === null ? leftBlocks(ask, facts, needs) : []),
    ...slotPages(ask, facts),
    ...stockSheetPages(ask, needs),
    ...(last ?? cardPages(ask, facts)),
    ...labelPages(ask, facts),
  ];
  return framed(pages, `${ask.title}, cut from ${ask.pad.name}`);
}
