import { describe, expect, test } from 'vitest';
import type { Cell } from '../../server/photo/light-cells.ts';
import { leftAt, lightLeft } from '../../server/photo/light-left.ts';

type Logs = readonly [r: number, g: number, b: number];

/** Bare table all over the picture, with what is left of its light at each place in [-1, 1]. */
function table(left: (x: number, y: number) => Logs): Cell[] {
  return Array.from({ length: 60 * 45 }, (_, at) => {
    const [x, y] = [(at % 60) / 29.5 - 1, Math.floor(at / 60) / 22 - 1];
    return { x, y, log: left(x, y) };
  });
}

const EVEN = [0, 1, 2].map(() => new Float64Array(6));

/** A shadow over the right half, its edge a quarter of the picture wide. */
const shadow = (x: number): number => -0.2 / (1 + Math.exp(-8 * x));

describe('light that no smooth surface follows', () => {
  test('the edge of a shadow is followed, and it is told how much of it there is', () => {
    const cells = table((x) => [shadow(x), shadow(x), shadow(x)]);
    const left = lightLeft([cells], EVEN)!;
    expect(left.spread).toBeGreaterThan(0.07);
    expect(left.spread).toBeLessThan(0.12);
    const step = (from: number, to: number): number =>
      leftAt(left, to, 0.3) - leftAt(left, from, 0.3);
    expect(step(-0.6, 0.6)).toBeLessThan(-0.13);
    expect(step(-0.6, 0.6)).toBeGreaterThan(-0.22);
    expect(Math.abs(step(-0.9, -0.6))).toBeLessThan(0.03);
  });

  test('boards that differ in colour as they do in brightness are the table itself', () => {
    const board = (x: number): number => (Math.floor(5 * (x + 1)) % 2 === 0 ? 0.06 : -0.06);
    const cells = table((x) => [0.7 * board(x), board(x), 1.4 * board(x)]);
    const left = lightLeft([cells], EVEN)!;
    expect(left.spread).toBe(0);
    expect(Math.max(...left.at.map(Math.abs))).toBe(0);
  });

  test('two surfaces under one light each keep the height of their own', () => {
    const cells = table((x) => [shadow(x), shadow(x), shadow(x)]);
    const darker = (all: readonly Cell[]): Cell[] =>
      all.map(({ x, y, log: [r, g, b] }) => ({ x, y, log: [r - 1.2, g - 1, b - 0.7] }));
    const parts = [cells.filter(({ y }) => y < 0), darker(cells.filter(({ y }) => y >= 0))];
    const left = lightLeft(parts, EVEN)!;
    expect(Math.abs(leftAt(left, 0.6, -0.5) - leftAt(left, 0.6, 0.5))).toBeLessThan(0.02);
  });

  test('too little bare table tells nothing', () => {
    expect(lightLeft([table(() => [0, 0, 0]).filter(({ x }) => x < -0.8)], EVEN)).toBeNull();
  });
});
