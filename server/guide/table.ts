import type { Mark } from './drawing.ts';
import { shortened } from './letters.ts';
import { INK, SIZES, SOFT } from './look.ts';
import { ruleAcross } from './page.ts';
import type { Block } from './page.ts';

export interface Column {
  readonly head: string;
  readonly width: number;
  readonly bold?: boolean;
  readonly align?: 'left' | 'right';
}

/** A plain table: a head in small letters, which may run over columns without one, a hair line under each row; words too long end in dots. */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  x: number,
  y: number,
  size: number = SIZES.body,
): Block {
  const high = size * 1.62;
  const width = columns.reduce((sum, column) => sum + column.width, 0);
  const lefts = columns.map((_, index) =>
    columns.slice(0, index).reduce((sum, column) => sum + column.width, x),
  );
  const cell = (
    text: string,
    index: number,
    base: number,
    style: { size: number; bold: boolean; colour: string },
    room = columns[index]!.width,
  ): Mark => {
    const column = columns[index]!;
    const right = column.align === 'right';
    return {
      kind: 'words',
      x: right ? lefts[index]! + column.width - 2 : lefts[index]!,
      y: base,
      text: shortened(text, room - 2, style.size, style.bold),
      align: right ? 'right' : 'left',
      ...style,
    };
  };
  const heads = columns.flatMap(({ head }, index) => {
    if (head === '') return [];
    const next = columns.findIndex((column, at) => at > index && column.head !== '');
    const right = next === -1 ? x + width : lefts[next]!;
    const style = { size: SIZES.small, bold: false, colour: SOFT };
    return [cell(head, index, y + 3, style, right - lefts[index]!)];
  });
  const body = rows.flatMap((row, line) => {
    const top = y + 5 + line * high;
    return [
      ...row.map((text, index) =>
        cell(text, index, top + high * 0.68, {
          size,
          bold: columns[index]!.bold === true,
          colour: INK,
        }),
      ),
      ruleAcross(x, top + high, width),
    ];
  });
  return {
    marks: [...heads, ruleAcross(x, y + 4.6, width, INK), ...body],
    height: 5 + rows.length * high,
  };
}
