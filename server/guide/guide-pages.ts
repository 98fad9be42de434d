import type { GuideAsk } from './ask.ts';
import { classPages } from './class-pages.ts';
import { cardPages } from './card-pages.ts';
import { factsOf } from './facts.ts';
import { glancePages } from './glance-page.ts';
import { labelPages } from './label-pages.ts';
import { leftPages } from './left-pages.ts';
import { listPages } from './list-pages.ts';
import { framed } from './page.ts';
import type { GuidePage } from './page.ts';
import { sheetsPages } from './sheets-page.ts';
import { shoppingPages } from './shopping-page.ts';
import { slotPages } from './slot-pages.ts';
import { stockNeeds } from './stock-needs.ts';
import { stockPages } from './stock-pages.ts';

export type { GuideAsk } from './ask.ts';
export type { GuidePage } from './page.ts';

/**
 * The guide that she cuts from, page by page, as marks in mm: the batch at a glance, sheets against
 * cards, the cutting list, a page a sheet, the cardstock, what is left over, a page a card, labels, what to buy.
 *
 * Refuses     a plan that speaks of sheets, cards or cardstock that are no longer there.
 */
export function guidePages(ask: GuideAsk): GuidePage[] {
  const facts = factsOf(ask);
  const needs = stockNeeds(ask, facts);
  const pages = [
    ...glancePages(ask, facts),
    ...classPages(ask, facts, needs),
    ...sheetsPages(facts),
    ...listPages(ask, facts),
    ...slotPages(ask, facts),
    ...stockPages(ask, needs),
    ...leftPages(ask, facts, needs),
    ...cardPages(ask, facts),
    ...labelPages(ask, facts),
    ...shoppingPages(needs),
  ];
  return framed(pages, `${ask.title}, cut from ${ask.pad.name}`);
}
