import { expect, test } from 'vitest';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import { cutSteps } from '../../server/cutting/cut-steps.ts';
import type { CutTree, Piece, Slot } from '../../server/cutting/piece.ts';
import { usualSettings } from '../../server/cutting/settings.ts';
import { pieceLabels } from '../../server/guide/piece-label.ts';
import { stepWords } from '../../server/guide/step-words.ts';
import { units } from '../../server/lengths/length.ts';
import { parseLength } from '../../server/lengths/parse-length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { flat } from './flat.ts';

const piece = (id: string, size: string): Piece => ({
  id,
  card: 3,
  layer: id,
  role: 'panel',
  size: parseSize(size),
  shape: { kind: 'rectangle' },
  paper: 'a',
});

/** A 6 x 6 in sheet: a panel as wide as is said, then a strip, then what is left. */
function slotOf(width: string, rest: string): Slot {
  const panel = piece('panel', `${width} x 4 in`);
  const strip = piece('strip', `${width} x 2 in`);
  const cuts: CutTree = {
    kind: 'cut',
    way: 'vertical',
    at: parseLength(`${width} in`),
    first: {
      kind: 'cut',
      way: 'horizontal',
      at: parseLength('4 in'),
      first: { kind: 'piece', piece: 'panel' },
      second: { kind: 'piece', piece: 'strip' },
    },
    second: { kind: 'rest', size: parseSize(`${rest} x 6 in`) },
  };
  const zero = units(0);
  return {
    id: 'slot',
    cuts,
    pieces: [
      { piece: panel, x: zero, y: zero, turned: false },
      { piece: strip, x: zero, y: parseLength('4 in'), turned: false },
    ],
  };
}

const wordsOf = (slot: Slot): string[] =>
  stepWords(cutSteps(slot), slot, 'in').map(({ small }) => small);

test('a part that is cut again says which cut it is kept for, a piece says its size', () => {
  const [first, second] = wordsOf(slotOf('5', '1'));
  expect(first).toContain('Left: keep it for cut 2.');
  expect(second).toContain('Top: card 3 panel, 5 x 4 in. Below: card 3 strip, 5 x 2 in.');
});

test('a sliver of 1/8 in or less is trimmed away, a wider rest is left over', () => {
  expect(wordsOf(slotOf('5 7/8', '1/8'))[0]).toContain('Right: trim away 1/8 in.');
  expect(wordsOf(slotOf('5 15/16', '1/16'))[0]).toContain('Right: trim away 1/16 in.');
  expect(wordsOf(slotOf('5 3/4', '1/4'))[0]).toContain('Right: left over, 1/4 x 6 in.');
});

test('a label makes way for the number of a cut, and keeps its letters large in a narrow strip', () => {
  const strip = { ...piece('greeting', '3 x 1/4 in'), role: 'greeting' as const };
  const placed = { piece: strip, x: units(0), y: units(0), turned: false };
  const labelled = [{ placed, turn: null, showsOther: false }];
  const badge = { x: 35, y: 0, width: 6, height: 6 };
  const [free, moved] = [pieceLabels(labelled, 1, []), pieceLabels(labelled, 1, [badge])].map(
    (marks) => flat(marks).filter(({ mark }) => mark.kind === 'area'),
  );
  const xs = (plates: typeof free): number[] =>
    plates!.flatMap(({ mark, place }) =>
      mark.kind === 'area' ? mark.corners.map((corner) => place(corner).x) : [],
    );
  expect(Math.min(...xs(free)) < 38 && Math.max(...xs(free)) > 38).toBe(true);
  expect(Math.max(...xs(moved)) <= 35 || Math.min(...xs(moved)) >= 41).toBe(true);
  const narrow = flat(pieceLabels(labelled, 0.3, [])).flatMap(({ mark }) =>
    mark.kind === 'words' ? [[mark.text, mark.size] as const] : [],
  );
  expect(narrow.map(([text]) => text)).toContain('3');
  for (const [, size] of narrow) expect(size).toBeGreaterThanOrEqual((9 * 25.4) / 72);
});

test('two triangles of one rectangle are parted from corner to corner, and each is named', () => {
  const at = (
    x: string,
    y: string,
  ): { x: ReturnType<typeof units>; y: ReturnType<typeof units> } => ({
    x: units(x === '0' ? 0 : parseLength(x)),
    y: units(y === '0' ? 0 : parseLength(y)),
  });
  const half = (id: string, ...points: ReturnType<typeof at>[]): Piece => ({
    ...piece(id, '3 x 2 in'),
    shape: { kind: 'corners', points },
  });
  const pieces = [
    half('first', at('0', '0'), at('3 in', '0'), at('0', '2 in')),
    half('second', at('3 in', '0'), at('3 in', '2 in'), at('0', '2 in')),
  ];
  const [slot] = cutScheme(pieces, parseSize('6 x 6 in'), usualSettings('in')).slots;
  const steps = stepWords(cutSteps(slot!), slot!, 'in');
  expect(steps.at(-2)!.small).toContain('card 3 first and second in one, 3 x 2 in');
  expect(steps.at(-1)).toMatchObject({
    main: 'Card 3 first and second: cut apart',
    small:
      'Shown side up, the arrow of card 3 first up. Cut from the upper right corner to the lower left corner. The part with the upper left corner is card 3 first, the other second.',
  });
  // Each number stands in its own triangle: above and below the line between them.
  const labels = pieceLabels(
    slot!.pieces.map((placed) => ({ placed, turn: 0 as const, showsOther: false })),
    1,
    [],
  ).map(({ kind, ...mark }) => (kind === 'group' && 'x' in mark ? [mark.x, mark.y] : []));
  const below = labels.map(([x, y]) => x! / 76.2 + y! / 50.8 > 1);
  expect(below).toEqual([false, true]);
});
