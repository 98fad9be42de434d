import { describe, expect, test } from 'vitest';
import { repeatLikeness } from '../../server/pattern/repeat-likeness.ts';
import { sameness } from '../../server/pattern/sameness.ts';
import { drawn } from '../colour/drawn.ts';
import { SHELL, stripes, traitsOf } from './prints.ts';

describe('repeats of two sides', () => {
  test.each([
    [25.4, 25.4, 1],
    [25.4, 25.6, 1],
    [null, 25.4, 1],
    [12.7, 25.4, 0.65],
    [14.7, 44.1, 0.65],
    [28.7, 43, 0.65],
    [19.05, 63.5, 0.5],
    [12.7, 13.2, 0.5],
  ])('%f and %f mm: %f', (a, b, likeness) => {
    expect(repeatLikeness(a, b)).toBe(likeness);
    expect(repeatLikeness(b, a)).toBe(likeness);
  });

  test('count in how alike two prints of lines are', () => {
    const [wide, narrow] = [6, 20].map((count) =>
      traitsOf(drawn(stripes(count, SHELL, 1), { size: 240, noise: 1 })),
    );
    const drawing = sameness(wide!, { ...narrow!, repeat: wide!.repeat });
    expect(drawing).toBeGreaterThan(0.2);
    expect(sameness(wide!, narrow!)).toBeCloseTo(drawing / 2, 6);
  });
});
