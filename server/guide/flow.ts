import type { Mark } from './drawing.ts';
import { PAGE } from './page.ts';
import type { Block } from './page.ts';

/**
 * Sets blocks one under the other and goes on to a next page when one does not fit.
 *
 * Takes       the blocks, drawn from 0, 0; where they start at the left, on the first page and on the
 *             following ones, and where they end; how many columns the first page has; the gap between them. All in mm.
 * Gives       the marks of each page, at least one; a block taller than a page stands alone on its own.
 */
export function flow(
  blocks: readonly Block[],
  place: {
    readonly x?: number;
    readonly top: number;
    readonly again?: number;
    readonly bottom: number;
    readonly columns?: number;
  },
  gap = 0,
): Mark[][] {
  const { x = 0, top, again = top, bottom, columns = 1 } = place;
  const pages: Mark[][] = [[]];
  let y = top;
  for (const block of blocks) {
    if (pages.at(-1)!.length > 0) y += block.over ?? 0;
    if (y + block.height > bottom && pages.at(-1)!.length > 0) {
      pages.push([]);
      y = pages.length <= columns ? top : again;
    }
    pages.at(-1)!.push({ kind: 'group', x, y, marks: block.marks });
    y += block.height + gap;
  }
  return pages;
}

const BETWEEN = 6;

/** Width of a column where a page has two. */
export const COLUMN = (PAGE.width - BETWEEN) / 2;

/** The same in two columns a page; blocks are as wide as `COLUMN`. */
export function flowInTwo(
  blocks: readonly Block[],
  place: { readonly top: number; readonly again?: number; readonly bottom: number },
  gap: number,
): Mark[][] {
  const columns = flow(blocks, { ...place, columns: 2 }, gap);
  return columns.flatMap((left, at) =>
    at % 2 === 1
      ? []
      : [[...left, { kind: 'group', x: COLUMN + BETWEEN, y: 0, marks: columns[at + 1] ?? [] }]],
  );
}

/** One block under another, as one that is not parted; the gap in mm. */
export function under(upper: Block, { marks, height }: Block, gap: number): Block {
  const y = upper.height + gap;
  return {
    marks: [...upper.marks, { kind: 'group', x: 0, y, marks }],
    height: y + height,
  };
}

/** Which of the blocks, counted from 0, stand on a page, in one of its columns. */
export function blocksOn(page: readonly Mark[], blocks: readonly Block[]): number[] {
  const groups = page.flatMap((mark) => (mark.kind === 'group' ? [mark] : []));
  const placed = new Set(
    groups.flatMap(({ marks }) => [
      marks,
      ...marks.flatMap((mark) => (mark.kind === 'group' ? [mark.marks] : [])),
    ]),
  );
  return blocks.flatMap(({ marks }, at) => (placed.has(marks) ? [at] : []));
}

/** Names the pages of one chapter: the first by its name, the others as its continuation. */
export function chapter(
  name: string,
  pages: readonly (readonly Mark[])[],
): { name: string; marks: readonly Mark[] }[] {
  return pages.map((marks, index) => ({ name: index === 0 ? name : `${name}, continued`, marks }));
}
