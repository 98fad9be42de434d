import { describe, expect, test } from 'vitest';
import type { Grid } from '../../server/pattern/grid.ts';
import { turnedLikeness } from '../../server/pattern/turned-likeness.ts';

const likeness = (of: Grid): Record<'half' | 'leftRight' | 'upDown', number> => {
  const told = turnedLikeness(of);
  return { half: told.half(), leftRight: told.leftRight(), upDown: told.upDown() };
};

const grid = (value: (x: number, y: number) => number, side = 32): Grid => ({
  side,
  values: Float64Array.from({ length: side * side }, (_, at) =>
    value(at % side, Math.floor(at / side)),
  ),
});

describe('how like a picture is to itself turned over', () => {
  test('a chessboard is itself either way', () => {
    const board = likeness(grid((x, y) => ((x >> 2) + (y >> 2)) % 2));
    for (const like of Object.values(board)) expect(like).toBeGreaterThan(0.9);
  });

  test('arrows that point down are themselves mirrored left and right, and not upside down', () => {
    const arrow = (x: number, y: number): number =>
      Math.abs((x % 8) - 3.5) < (8 - (y % 8)) / 2 ? 1 : 0;
    const { half, leftRight, upDown } = likeness(grid(arrow));
    expect(leftRight).toBeGreaterThan(0.95);
    expect(half).toBeLessThan(0.9);
    expect(upDown).toBeLessThan(0.9);
  });

  test('slanted strokes are themselves turned by half, and not mirrored', () => {
    const slanted = likeness(grid((x, y) => ((x + y) % 8 < 3 ? 1 : 0)));
    expect(slanted.half).toBeGreaterThan(0.95);
    expect(Math.max(slanted.leftRight, slanted.upDown)).toBeLessThan(0.5);
  });

  test('nothing is like nothing', () => {
    expect(likeness(grid(() => 3))).toEqual({ half: 0, leftRight: 0, upDown: 0 });
  });
});
