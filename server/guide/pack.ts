import type { Mark } from './drawing.ts';
import type { Block } from './page.ts';

/**
 * Sets groups of blocks on few pages: the first block of a group goes on the first page that still has room
 * for it, the others after it.
 *
 * Takes       the groups, their blocks drawn from 0, 0; where a page starts and ends and the gap between
 *             blocks, in mm.
 * Gives       the marks of each page; a block taller than a page stands alone on its own.
 */
export function pack(
  groups: readonly (readonly Block[])[],
  { top, bottom }: { readonly top: number; readonly bottom: number },
  gap: number,
): Mark[][] {
  const pages: { marks: Mark[]; y: number }[] = [];
  for (const group of groups) {
    let from = 0;
    for (const block of group) {
      let at = pages.findIndex(({ y }, page) => page >= from && y + block.height <= bottom);
      if (at === -1) at = pages.push({ marks: [], y: top }) - 1;
      const page = pages[at]!;
      page.marks.push({ kind: 'group', x: 0, y: page.y, marks: block.marks });
      page.y += block.height + gap;
      from = at;
    }
  }
  return pages.map(({ marks }) => marks);
}
