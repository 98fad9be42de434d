import type { GuideAsk } from './ask.ts';
import { classFacts, stackSaid } from './class-facts.ts';
import type { Facts } from './facts.ts';
import { chapter, flow } from './flow.ts';
import { BODY, PAGE, paragraph } from './page.ts';
import type { GuidePage } from './page.ts';
import { SOFT } from './look.ts';
import type { StockNeed } from './stock-needs.ts';

const ORDER =
  'Sheets of one stack are cut alike: lay them edge to edge with the same side up, cut once, and sort the pieces sheet by sheet into the bags. Cut one sheet first, then trust the stack.';

/** What the batch takes when it is cut for several people; no page for one. */
export function classPages(ask: GuideAsk, facts: Facts, needs: readonly StockNeed[]): GuidePage[] {
  if ((ask.people ?? 1) === 1) return [];
  const set = classFacts(ask, facts, needs);
  const line = (text: string) => paragraph(text, 0, 0, PAGE.width);
  const blocks = [
    ...set.said.map(line),
    paragraph('Sheets to have', 0, 0, PAGE.width, { bold: true }),
    ...set.ofSheets.map(({ sheet, needed }) =>
      line(`${sheet.label}: ${needed}. One pad has ${sheet.copies}.`),
    ),
    paragraph('Stacks, in the order of the pages that follow', 0, 0, PAGE.width, { bold: true }),
    paragraph(ORDER, 0, 0, PAGE.width, { colour: SOFT }),
    ...set.stacks.map((stack, at) => line(`${stackSaid(stack, facts, at)}.`)),
  ];
  const place = { top: BODY.top - 2, bottom: BODY.bottom };
  return chapter(`For ${set.people} people`, flow(blocks, place, 2));
}
