import { describe, expect, test } from 'vitest';
import type { Grid } from '../../server/pattern/grid.ts';
import { isItselfTurned } from '../../server/pattern/itself-turned.ts';
import { turnedLikeness } from '../../server/pattern/turned-likeness.ts';

const SIDE = 64;

/** Waves across and down with parts of their own strewn among them: from wholly themselves upside down to not at all. */
function print(seed: number): Grid {
  const [a, b] = [3 + (seed % 5), 2 + (seed % 3)];
  return {
    side: SIDE,
    values: Float64Array.from({ length: SIDE * SIDE }, (_, at) => {
      const [x, y] = [at % SIDE, Math.floor(at / SIDE)];
      const own = Math.sin(12.9898 * x + 78.233 * y + seed) * 43758.5453;
      const wave = Math.sin((x * a) / 10) + Math.cos((y * b) / 9 + seed);
      const saw = ((y * b) % 16) / 8;
      return wave + (seed / 8) * saw + (seed / 10) * (own - Math.floor(own));
    }),
  };
}

describe('whether a print upside down is itself', () => {
  // The transform over all shifts is the reference: the short way may never say otherwise.
  test('is told the short way as by trying every shift', () => {
    const told = new Set<boolean>();
    for (let seed = 0; seed < 16; seed++) {
      const half = turnedLikeness(print(seed)).half();
      for (const level of [0.2, 0.4, 0.6, 0.8, 0.95]) {
        expect(isItselfTurned(print(seed), level)).toBe(half >= level);
        told.add(half >= level);
      }
    }
    expect(told.size).toBe(2);
  });

  test('nothing is like nothing', () => {
    expect(isItselfTurned({ side: SIDE, values: new Float64Array(SIDE * SIDE) }, 0.5)).toBe(false);
  });
});
