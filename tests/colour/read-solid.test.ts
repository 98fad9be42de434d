import { describe, expect, test } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { readSolid } from '../../server/colour/read-solid.ts';
import { chanceOf, drawn } from './drawn.ts';

const TEAL: Lab = { l: 38, a: -24, b: -10 };
const CARD: Lab = { l: 95, a: 0, b: -2 };
const error = { noise: 1, field: 0.5, reference: 0.8 };

describe('cardstock', () => {
  test('is read to a few tenths', () => {
    const { lab, uncertainty } = readSolid(
      drawn(() => TEAL, { size: 60, noise: 1 }),
      error,
    );
    expect(difference(lab, TEAL)).toBeLessThan(0.2);
    expect(uncertainty).toBeGreaterThan(0.3);
    expect(uncertainty).toBeLessThan(1.5);
  });

  test('a shadow along one edge and some dust do not change it', () => {
    const chance = chanceOf(3);
    const dust = Array.from({ length: 12 }, () => [chance(), chance()] as const);
    const image = drawn(
      (x, y) => {
        if (dust.some(([u, v]) => Math.hypot(x - u, y - v) < 0.02)) return { l: 80, a: 0, b: 0 };
        return x < 0.05 ? { ...TEAL, l: 20 } : TEAL;
      },
      { size: 60, noise: 1 },
    );
    expect(difference(readSolid(image, error).lab, TEAL)).toBeLessThan(0.3);
  });

  test('white cardstock is not taken for bare card', () => {
    const { lab } = readSolid(
      drawn(() => CARD, { size: 60, noise: 1 }),
      error,
    );
    expect(difference(lab, CARD)).toBeLessThan(0.2);
  });
});

describe('an ink smear on white card', () => {
  const smear = (x: number, y: number): Lab => {
    const inside = Math.hypot((x - 0.5) / 0.42, (y - 0.5) / 0.3) < 1;
    return inside ? { ...TEAL, l: TEAL.l + 20 * (x - 0.5) } : CARD;
  };

  test('only what is covered counts', () => {
    const solid = readSolid(drawn(smear, { size: 80, noise: 1 }), error);
    expect(difference(solid.lab, TEAL)).toBeLessThan(1);
  });

  test('its range is told', () => {
    const { darkest, lightest } = readSolid(drawn(smear, { size: 80, noise: 1 }), error);
    expect(darkest.l).toBeLessThan(TEAL.l - 4);
    expect(lightest.l).toBeGreaterThan(TEAL.l + 4);
    expect(lightest.l).toBeLessThan(TEAL.l + 14);
  });
});
