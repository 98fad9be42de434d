import type { GuideAsk } from './ask.ts';
import { classPages } from './class-pages.ts';
import { beginPages } from './begin-page.ts';
import { cardPages } from './card-pages.ts';
import { factsOf } from './facts.ts';
import { glancePages } from './glance-page.ts';
import { labelPages } from './label-pages.ts';
import { listPages } from './list-pages.ts';
import { framed } from './page.ts';
import type { GuidePage } from './page.ts';
import { numberPages } from './number-pages.ts';
import { slotPages } from './slot-pages.ts';
import { stockNeeds } from './stock-needs.ts';
import { stockListPages, stockSheetPages } from './stock-pages.ts';

export type { GuideAsk } from './ask.ts';
export type { GuidePage } from './page.ts';

/**
 * The guide that she cuts from, page by page, as marks in mm: the batch at a glance, the sheets with
 * their numbers, all cautions with the ruler and the table of sheets against cards, the cutting list, sheet
 * by sheet, the cardstock with what to buy and what is left over, card by card, labels.
 *
 * Refuses     a plan that speaks of sheets, cards or cardstock that are no longer there.
 */
export function guidePages(ask: GuideAsk): GuidePage[] {
  const facts = factsOf(ask);
  const needs = stockNeeds(ask, facts);
  const pages = [
    ...glancePages(ask, facts),
    ...numberPages(ask, facts),
    ...classPages(ask, facts, needs),
    ...beginPages(ask, facts),
    ...listPages(ask, facts),
    ...slotPages(ask, facts),
    ...stockListPages(ask, facts, needs),
    ...stockSheetPages(ask, needs),
    ...cardPages(ask, facts),
    ...labelPages(ask, facts),
  ];
  return framed(pages, `${ask.title}, cut from ${ask.pad.name}`);
}
