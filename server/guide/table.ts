import type { Mark } from './drawing.ts';
import { linesOf, shortened } from './letters.ts';
import { INK, SIZES, SOFT } from './look.ts';
import { ruleAcross } from './page.ts';
import type { Block } from './page.ts';

export interface Column {
  readonly head: string;
  readonly width: number;
  readonly bold?: boolean;
}

/**
 * A plain table: a head in small letters, which may run over columns without one, a hair line under each
 * row. What is too long for its column goes on in a further line; nothing is cut off.
 */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  x: number,
  y: number,
  size: number = SIZES.body,
): Block {
  const width = columns.reduce((sum, column) => sum + column.width, 0);
  const lefts = columns.map((_, index) =>
    columns.slice(0, index).reduce((sum, column) => sum + column.width, x),
  );
  const heads = columns.flatMap(({ head }, index): Mark[] => {
    if (head === '') return [];
    const next = columns.findIndex((column, at) => at > index && column.head !== '');
    const room = (next === -1 ? x + width : lefts[next]!) - lefts[index]! - 2;
    const text = shortened(head, room, SIZES.small);
    return [{ kind: 'words', x: lefts[index]!, y: y + 3, text, size: SIZES.small, colour: SOFT }];
  });
  const marks: Mark[] = [...heads, ruleAcross(x, y + 4.6, width, INK)];
  let top = y + 5;
  for (const row of rows) {
    const lines = row.map((text, index) => {
      const { width: room, bold } = columns[index]!;
      return linesOf(text, room - 2, size, bold);
    });
    marks.push(
      ...lines.flatMap((cell, index) =>
        cell.map((text, line): Mark => ({
          kind: 'words',
          x: lefts[index]!,
          y: top + size * (1.04 + line * NEXT_LINE),
          text,
          size,
          bold: columns[index]!.bold === true,
          colour: INK,
        })),
      ),
    );
    top += size * (ROW + (Math.max(1, ...lines.map(({ length }) => length)) - 1) * NEXT_LINE);
    marks.push(ruleAcross(x, top, width));
  }
  return { marks, height: top - y };
}

/** Heights of a row and of each further line of it, in heights of its letters. */
const ROW = 1.52;
const NEXT_LINE = 1.2;
