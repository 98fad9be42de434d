import { describe, expect, test } from 'vitest';
import { labelPixels } from '../../server/colour/label-pixels.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { unmistakable } from '../../server/colour/unmistakable.ts';
import { drawn } from './drawn.ts';

const CREAM: Lab = { l: 95, a: -2, b: 7 };
const PINK: Lab = { l: 60, a: 49, b: -21 };
const BROWN: Lab = { l: 20, a: 11, b: 27 };
/** Half way from cream to pink. */
const ROSE: Lab = { l: 77, a: 24, b: -7 };

describe('colours to which no two others mix', () => {
  test('ends are, what lies between is not', () => {
    expect(unmistakable([CREAM, PINK, BROWN])).toEqual([0, 1, 2]);
    expect(unmistakable([CREAM, PINK, BROWN, ROSE])).toEqual([0, 1, 2]);
  });

  test('one or two colours always are', () => {
    expect(unmistakable([CREAM])).toEqual([0]);
    expect(unmistakable([CREAM, PINK])).toEqual([0, 1]);
  });
});

describe('dots too small to hold a flat pixel', () => {
  const dots = (x: number, y: number): Lab =>
    Math.hypot(((8 * x) % 1) - 0.5, ((8 * y) % 1) - 0.5) < 0.2 ? BROWN : CREAM;
  const image = drawn(dots, { size: 80, noise: 0.5 });
  /** Flat only well outside the dots. */
  const flat = Uint8Array.from({ length: 80 * 80 }, (_, at) => {
    const [x, y] = [((at % 80) + 0.5) / 80, (Math.floor(at / 80) + 0.5) / 80];
    return Math.hypot(((8 * x) % 1) - 0.5, ((8 * y) % 1) - 0.5) > 0.32 ? 1 : 0;
  });
  const shareOf = (colours: readonly Lab[], index: number): number => {
    const { of } = labelPixels(image, colours, flat);
    return of.filter((label) => label === index).length / of.length;
  };

  test('show their colour all the same', () => {
    expect(shareOf([CREAM, BROWN], 1)).toBeGreaterThan(0.09);
    expect(shareOf([CREAM, BROWN], 1)).toBeLessThan(0.16);
  });

  test('but their rims show no third colour that lies on the way', () => {
    const between = { l: 57, a: 4, b: 17 };
    expect(shareOf([CREAM, BROWN, between], 2)).toBe(0);
  });
});

test('a mixed pixel between two quiet tones goes to the nearer one, whichever is named first', () => {
  const dark = { l: 60, a: 0, b: 0 };
  const pale = { l: 67, a: 0, b: 0 };
  const row = [dark, dark, { l: 65.5, a: 0, b: 0 }, pale, pale];
  const lab = Float32Array.from([row, row, row].flat().flatMap(({ l, a, b }) => [l, a, b]));
  const flat = Uint8Array.from([1, 1, 0, 1, 1, 1, 1, 0, 1, 1, 1, 1, 0, 1, 1]);
  const image = { width: 5, height: 3, lab };
  expect([...labelPixels(image, [dark, pale], flat).of].slice(5, 10)).toEqual([0, 0, 1, 1, 1]);
  expect([...labelPixels(image, [pale, dark], flat).of].slice(5, 10)).toEqual([1, 1, 0, 0, 0]);
});
