import { describe, expect, test } from 'vitest';
import { hatch } from '../../server/guide/hatch.ts';
import { linesOf, runsOf, shortened, widthOf } from '../../server/guide/letters.ts';
import { printRuler } from '../../server/guide/print-ruler.ts';
import { cardsSaid, lengthSaid, sizeSaid } from '../../server/guide/said.ts';
import { parseLength } from '../../server/lengths/parse-length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';

describe('words', () => {
  test('a fraction is set as a fraction, the whole before it close', () => {
    const runs = runsOf({ kind: 'words', x: 0, y: 10, text: 'mark 4 1/16 in', size: 4 });
    expect(runs.map(({ text }) => text)).toEqual(['mark ', '4', '1', '/', '16', ' in']);
    expect(runs[2]!.y).toBeLessThan(runs[4]!.y);
    expect(runs[2]!.size).toBeLessThan(runs[1]!.size);
    runs.slice(1).forEach((run, index) => expect(run.x).toBeGreaterThan(runs[index]!.x));
  });

  test('sizes get a times sign, other words keep their x', () => {
    const said = (text: string): string =>
      runsOf({ kind: 'words', x: 0, y: 0, text, size: 4 })
        .map((run) => run.text)
        .join('');
    expect(said('105 x 148 mm')).toBe('105 × 148 mm');
    expect(said('box x')).toBe('box x');
  });

  test('alignment moves the whole line', () => {
    const at = (align: 'left' | 'middle' | 'right'): number =>
      runsOf({ kind: 'words', x: 50, y: 0, text: 'Kelp', size: 4, align })[0]!.x;
    expect(at('middle')).toBeCloseTo(50 - widthOf('Kelp', 4) / 2, 9);
    expect(at('right')).toBeCloseTo(50 - widthOf('Kelp', 4), 9);
  });

  test('lines are broken to a width and lose no word', () => {
    const text = 'Hold the real papers together in daylight before the first cut of 4 1/4 in';
    const lines = linesOf(text, 40, 4);
    expect(lines.join(' ')).toBe(text);
    for (const line of lines) expect(widthOf(line, 4)).toBeLessThanOrEqual(40);
    expect(widthOf(shortened(text, 30, 4), 4)).toBeLessThanOrEqual(30);
  });
});

describe('lengths in words', () => {
  test.each([
    ['4 1/4 in', 'in', '4 1/4 in'],
    ['99 mm', 'in', '3 7/8 in'],
    ['2 5/8 in', 'mm', '67 mm'],
    ['0.3 mm', 'mm', 'less than 1 mm'],
  ] as const)('%s on a ruler in %s is said as %s', (text, ruler, said) => {
    expect(lengthSaid(parseLength(text), ruler)).toBe(said);
  });

  test('sizes and cards', () => {
    expect(sizeSaid(parseSize('99 x 127 mm'), 'in')).toBe('3 7/8 x 5 in');
    expect(cardsSaid([1, 2, 7])).toBe('cards 1, 2 and 7');
  });
});

test('hatching stays inside its outline, at its angle', () => {
  const corners = [
    { x: 0, y: 0 },
    { x: 30, y: 0 },
    { x: 0, y: 40 },
  ];
  const lines = hatch(corners, 2, 45, { width: 0.3 });
  expect(lines.length).toBeGreaterThan(10);
  for (const { from, to } of lines) {
    for (const { x, y } of [from, to]) {
      expect(Math.min(x, y)).toBeGreaterThan(-1e-9);
      expect(x / 30 + y / 40).toBeLessThan(1 + 1e-9);
    }
    expect(to.y - from.y).toBeCloseTo(to.x - from.x, 9);
  }
});

test('the printed ruler has a mark for each eighth of six inches', () => {
  const lines = printRuler(5, 50, 'in').flatMap((mark) => (mark.kind === 'line' ? [mark] : []));
  expect(lines[0]!.to.x - lines[0]!.from.x).toBeCloseTo(152.4, 9);
  expect(lines).toHaveLength(1 + 49);
  expect(lines.at(-1)!.from.x).toBeCloseTo(5 + 152.4, 9);
});
