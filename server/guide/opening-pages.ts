import type { GuideAsk } from './ask.ts';
import { beginBlock } from './begin-page.ts';
import { classPages } from './class-pages.ts';
import type { Facts } from './facts.ts';
import { listsPages } from './lists-pages.ts';
import { numberPages, numbersEnd } from './number-pages.ts';
import { BODY } from './page.ts';
import type { Block, GuidePage } from './page.ts';
import { sheetsGrid, sheetsPages } from './sheets-page.ts';
import type { StockNeed } from './stock-needs.ts';

const BEGIN = 'Before you begin';
const TOP = BODY.top - 2;
/** The lowest that the table of sheets may reach. */
const LOWEST = BODY.bottom + 6;
/** Between two parts of a page. */
const APART = 8;
/** How large the sheets are drawn above the table: as they may be, or a little smaller where it fits then. */
const PARTS = [1, 0.93, 0.86] as const;

/**
 * What comes before the first cut: the sheets with their numbers, the table of sheets against cards, the cautions, and
 * the lists. The table stands under the numbers or under the cautions, where it fits; the lists go on under the
 * cautions where the table leaves them the room.
 */
export function openingPages(
  ask: GuideAsk,
  facts: Facts,
  needs: readonly StockNeed[],
  left: readonly Block[],
): GuidePage[] {
  const people = classPages(ask, facts, needs);
  const begin = beginBlock(ask);
  const lists = (above: Block | null): GuidePage[] =>
    listsPages(ask, facts, needs, left, above === null ? null : { name: BEGIN, block: above });
  for (const part of PARTS) {
    const table = tableFrom(facts, numbersEnd(ask, facts, part) + APART);
    if (table !== null)
      return [...withMore(numberPages(ask, facts, part), table), ...people, ...lists(begin)];
  }
  const numbers = numberPages(ask, facts);
  const underBegin = tableFrom(facts, TOP + begin.height + APART);
  const alone = {
    name: BEGIN,
    marks: [{ kind: 'group', x: 0, y: TOP, marks: begin.marks } as const],
  };
  if (underBegin !== null)
    return [...numbers, ...people, ...withMore([alone], underBegin), ...lists(null)];
  return [...numbers, ...people, ...sheetsPages(facts), ...lists(begin)];
}

/** The table from a height on; null where it does not fit there. */
function tableFrom(facts: Facts, from: number): GuidePage['marks'] | null {
  const table = sheetsGrid(facts, from);
  return table === null || table.bottom > LOWEST ? null : table.marks;
}

function withMore(pages: readonly GuidePage[], marks: GuidePage['marks']): GuidePage[] {
  return pages.map((page, at) =>
    at === pages.length - 1 ? { ...page, marks: [...page.marks, ...marks] } : page,
  );
}
