import type { Mark } from './drawing.ts';
import type { Block } from './page.ts';

/** Blocks that follow each other; others may stand between them unless they are to be kept together. */
export interface Group {
  readonly blocks: readonly Block[];
  readonly together: boolean;
}

/**
 * Sets groups of blocks on few pages: the first block of a group goes on the first page that still has room
 * for it, the others after it. A group that is kept together begins on the last page or a new one, and
 * what comes later fills its first page from above it, never between its blocks.
 *
 * Takes       the groups, their blocks drawn from 0, 0; where a page starts and ends and the gap between
 *             blocks, in mm.
 * Gives       the marks of each page; a block taller than a page stands alone on its own.
 */
export function pack(
  groups: readonly Group[],
  { top, bottom }: { readonly top: number; readonly bottom: number },
  gap: number,
): Mark[][] {
  const pages: Page[] = [];
  const room = bottom - top;
  const open = (): number => pages.push({ blocks: [], before: null, used: 0 }) - 1;
  for (const { blocks, together } of groups) {
    let from = together ? Math.max(0, pages.length - 1) : 0;
    const places: { at: number; within: number }[] = [];
    for (const block of blocks) {
      const fits = pages.findIndex(({ used }, at) => at >= from && used + block.height <= room);
      const at = fits === -1 ? open() : fits;
      const page = pages[at]!;
      const within = together ? page.blocks.length : (page.before ?? page.blocks.length);
      page.blocks.splice(within, 0, block);
      if (!together && page.before !== null) page.before += 1;
      page.used += block.height + gap;
      places.push({ at, within });
      from = at;
    }
    const [first, last] = [places[0], places.at(-1)];
    if (!together || first === undefined || first.at === last!.at) continue;
    pages[first.at]!.before = first.within;
    for (let at = first.at + 1; at < last!.at; at += 1) pages[at]!.used = Infinity;
  }
  return pages.map(({ blocks }) => {
    let y = top;
    return blocks.map(({ marks, height }): Mark => {
      const mark: Mark = { kind: 'group', x: 0, y, marks };
      y += height + gap;
      return mark;
    });
  });
}

interface Page {
  readonly blocks: Block[];
  /** Where in the list further blocks go in; null for its end. */
  before: number | null;
  /** What the blocks and the gaps after them take, in mm. */
  used: number;
}
