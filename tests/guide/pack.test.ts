import { expect, test } from 'vitest';
import type { Mark } from '../../server/guide/drawing.ts';
import { keptTogether } from '../../server/guide/kept-together.ts';
import { pack } from '../../server/guide/pack.ts';
import type { Group } from '../../server/guide/pack.ts';
import type { Block } from '../../server/guide/page.ts';
import { textOf } from './flat.ts';

const block = (name: string, height: number): Block => ({
  marks: [{ kind: 'words', x: 0, y: 0, text: name, size: 4 }],
  height,
});

function group(together: boolean, ...sizes: readonly (readonly [string, number])[]): Group {
  return { together, blocks: sizes.map(([name, height]) => block(name, height)) };
}

const set = (...groups: Group[]): string[][] =>
  pack(groups, { top: 10, bottom: 110 }, 2).map((marks) => textOf(marks));

test('a block goes on the first page that has room for it', () => {
  expect(set(group(false, ['a', 60]), group(false, ['b', 60]), group(false, ['c', 30]))).toEqual([
    ['a', 'c'],
    ['b'],
  ]);
});

test('nothing comes between the blocks of a group that is kept together', () => {
  const pages = set(
    group(true, ['a', 60], ['b', 60]),
    group(false, ['c', 30]),
    group(false, ['d', 30]),
    group(true, ['e', 90], ['f', 90], ['g', 50]),
    group(false, ['h', 8]),
  );
  expect(pages).toEqual([['c', 'a'], ['b', 'd'], ['h', 'e'], ['f'], ['g']]);
  const late = set(
    group(false, ['a', 60]),
    group(false, ['b', 90]),
    group(true, ['c', 30], ['d', 80]),
  );
  expect(late).toEqual([['a'], ['b'], ['c'], ['d']]);
});

test('blocks keep their gap and end above the bottom', () => {
  const marks: Mark[] = pack(
    [group(false, ['a', 49]), group(false, ['b', 49])],
    { top: 10, bottom: 110 },
    2,
  )[0]!;
  expect(marks).toMatchObject([{ y: 10 }, { y: 61 }]);
});

test('sheets that fit one page become one block, with the names of both', () => {
  const sheets = [
    { name: 'Sheet 1', blocks: [block('a', 40)] },
    { name: 'Sheet 7', blocks: [block('b', 40), block('b, continued', 30)] },
  ];
  const joined = keptTogether(sheets, 100, 2);
  expect(joined.map(({ names }) => names)).toEqual([['Sheet 1', 'Sheet 7'], ['Sheet 7']]);
  expect(joined.map((one) => one.block.height)).toEqual([82, 30]);
  expect(joined.map((one) => textOf(one.block.marks))).toEqual([['a', 'b'], ['b, continued']]);
});
