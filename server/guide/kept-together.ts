import type { Block } from './page.ts';

/** A sheet with the blocks that it is told in. */
export interface Told {
  readonly name: string;
  readonly blocks: readonly Block[];
}

/** A block with the names of the sheets that it tells of. */
export interface NamedBlock {
  readonly names: readonly string[];
  readonly block: Block;
}

/**
 * Sheets that belong together, as blocks: one block for as many as fit one page, one under the other, so that no
 * other sheet comes between them; else their own blocks in their order.
 *
 * Takes  the sheets, the height of a page and the gap between blocks, in mm.
 */
export function keptTogether(sheets: readonly Told[], room: number, gap: number): NamedBlock[] {
  const joined: NamedBlock[] = [];
  for (const { name, blocks } of sheets)
    for (const block of blocks) {
      const last = joined.at(-1);
      if (last === undefined || last.block.height + gap + block.height > room)
        joined.push({ names: [name], block });
      else
        joined[joined.length - 1] = {
          names: [...new Set([...last.names, name])],
          block: under(last.block, block, gap),
        };
    }
  return joined;
}

function under(upper: Block, lower: Block, gap: number): Block {
  const y = upper.height + gap;
  return {
    marks: [...upper.marks, { kind: 'group', x: 0, y, marks: lower.marks }],
    height: y + lower.height,
  };
}
