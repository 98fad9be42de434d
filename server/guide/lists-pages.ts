import type { GuideAsk } from './ask.ts';
import { cutListBlocks } from './cut-list.ts';
import type { Mark } from './drawing.ts';
import type { Facts } from './facts.ts';
import { blocksOn, flowInTwo } from './flow.ts';
import { BODY, headed } from './page.ts';
import type { Block, GuidePage } from './page.ts';
import { needsBlocks } from './needs-list.ts';
import { capital, listed } from './said.ts';
import { shoppingBlocks } from './shopping-blocks.ts';
import { stockListBlocks } from './stock-list.ts';
import type { StockNeed } from './stock-needs.ts';
import { whatItTakes } from './what-it-takes.ts';

interface List {
  readonly head: string;
  /** What the page is called that it stands on. */
  readonly name: string;
  readonly blocks: readonly Block[];
}

const PLACE = { top: BODY.top - 2, bottom: BODY.bottom + 7 } as const;
const GAP = 1.5;
const APART = 5;

/** What a page is called on which the left-overs stand. */
export const LEFT = 'what is left';

/**
 * All lists of the batch, one after the other in two columns, so that none begins a page of its own; `left` is what
 * is left over, where it stands here, under its head; `above` is what the first page begins with.
 */
export function listsPages(
  ask: GuideAsk,
  facts: Facts,
  needs: readonly StockNeed[],
  left: readonly Block[],
  above: { readonly name: string; readonly block: Block } | null,
): GuidePage[] {
  const lists: List[] = [
    {
      head: 'What it takes',
      name: 'what it takes',
      blocks: needsBlocks(whatItTakes(ask, facts, needs)),
    },
    { head: 'Shopping list', name: 'shopping list', blocks: shoppingBlocks(ask, needs) },
    { head: 'Cutting list', name: 'cutting list', blocks: cutListBlocks(ask, facts) },
    { head: 'Cardstock by colour', name: 'cardstock', blocks: stockListBlocks(ask, needs) },
  ].filter(({ blocks }) => blocks.length > 0);
  const parts = [
    ...lists.flatMap(({ head, name, blocks }, at) => {
      const [first, ...others] = blocks;
      // The head stands with the first block, so that it does not end a column by itself.
      const begun = headed(head, first!);
      return [{ ...begun, over: at > 0 ? APART : 0 }, ...others].map((block) => ({ name, block }));
    }),
    ...left.map((block, at) => ({ name: LEFT, block: at > 0 ? block : { ...block, over: APART } })),
  ];
  const blocks = parts.map(({ block }) => block);
  const top = above === null ? PLACE.top : PLACE.top + above.block.height + APART;
  return flowInTwo(blocks, { ...PLACE, top, again: PLACE.top }, GAP).map((marks, page) => {
    const here = [...new Set(blocksOn(marks, blocks).map((at) => parts[at]!.name))];
    if (page > 0 || above === null) return { name: capital(listed(here)), marks };
    const first: Mark = { kind: 'group', x: 0, y: PLACE.top, marks: above.block.marks };
    return { name: listed([above.name, ...here]), marks: [first, ...marks] };
  });
}
