import { describe, expect, test } from 'vitest';
import { intervalOf, wilson } from './interval.ts';

describe('the interval of a share', () => {
  // Newcombe (1998), Statist. Med. 17, 857-872, table I, method 3 (Wilson, no continuity correction); from memory.
  test.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('of %d in %d is %d to %d by Wilson', (part, whole, low, high) => {
    const [least, most] = wilson(part, whole);
    expect(least).toBeCloseTo(low, 3);
    expect(most).toBeCloseTo(high, 3);
  });

  test('is wider where the trials of a group fall alike, and never narrower than for single ones', () => {
    const alike = Array.from({ length: 10 }, (_, at) => ({ part: at < 5 ? 20 : 0, whole: 20 }));
    const mixed = Array.from({ length: 10 }, () => ({ part: 10, whole: 20 }));
    const width = ([low, high]: readonly [number, number]): number => high - low;
    const [least, most] = wilson(100, 200);
    expect(width(intervalOf(alike))).toBeGreaterThan(2 * 100 * (most - least));
    expect(width(intervalOf(mixed))).toBeCloseTo(100 * (most - least), 6);
  });
});
