import { describe, expect, test } from 'vitest';
import { colourMapOf, sharesWithin } from '../../server/colour/colour-map.ts';
import type { Palette } from '../../server/colour/palette.ts';
import { chance } from '../../server/plan/network/local-search.ts';

const SIZE = 320;
const GREY = { l: 50, a: 0, b: 0 };

function paletteWith(shares: readonly number[], of: Uint8Array): Palette {
  return {
    colours: shares.map((share) => ({ lab: GREY, share, role: 'accent', uncertainty: 1 })),
    tonal: false,
    where: colourMapOf({ width: SIZE, height: SIZE, of }, shares.length),
  };
}

/** Labels by a function of the place, each in [0, 1). */
function labelled(of: (x: number, y: number) => number): Uint8Array {
  return Uint8Array.from({ length: SIZE * SIZE }, (_, pixel) =>
    of((pixel % SIZE) / SIZE, Math.floor(pixel / SIZE) / SIZE),
  );
}

describe('where the colours of a side lie', () => {
  test('a part of two halves shows each by its area', () => {
    const palette = paletteWith(
      [0.5, 0.5],
      labelled((x) => (x < 0.5 ? 0 : 1)),
    );
    const within = (x: number, width: number): number[] =>
      sharesWithin(palette, { x, y: 0.1, width, height: 0.3 })!;
    expect(within(0, 0.5)).toEqual([1, 0]);
    expect(within(0.5, 0.5)).toEqual([0, 1]);
    expect(within(0.25, 0.5)[0]).toBeCloseTo(0.5, 6);
  });

  test('shares of any part are those of its pixels, also for prints much finer than a cell', () => {
    const random = chance(7);
    const part = { x: 0.2, y: 0.55, width: 0.6, height: 0.2 };
    // Three colours strewn pixel by pixel, the first more and more towards the right.
    const of = labelled((x) => {
      const drawn = random();
      return drawn < 0.2 + 0.5 * x ? 0 : drawn < 0.9 ? 1 : 2;
    });
    const shares = sharesWithin(paletteWith([0.45, 0.45, 0.1], of), part)!;
    const counts = [0, 0, 0];
    for (let y = 0.55 * SIZE; y < 0.75 * SIZE; y++)
      for (let x = 0.2 * SIZE; x < 0.8 * SIZE; x++) counts[of[Math.floor(y) * SIZE + x]!]!++;
    const total = counts.reduce((sum, count) => sum + count, 0);
    shares.forEach((share, at) => expect(Math.abs(share - counts[at]! / total)).toBeLessThan(0.04));
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
  });

  test('nothing is said where the places are not known, or of less than a cell', () => {
    const { where, ...bare } = paletteWith(
      [1],
      labelled(() => 0),
    );
    const whole = { x: 0, y: 0, width: 1, height: 1 };
    expect(sharesWithin(bare, whole)).toBeNull();
    expect(sharesWithin({ ...bare, where: where! }, whole)).toEqual([1]);
    const small = { x: 0.5, y: 0.5, width: 0.001, height: 0.2 };
    expect(sharesWithin({ ...bare, where: where! }, small)).toBeNull();
  });
});
