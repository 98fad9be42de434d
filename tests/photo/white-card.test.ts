import { describe, expect, test } from 'vitest';
import { linearFromLab } from '../../server/colour/spaces.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { encodedByte } from '../../server/colour/curves.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import { BESIDE_CREAM, isWhite, patchOf } from '../../server/photo/white-card.ts';
import type { Patch } from '../../server/photo/white-card.ts';

/** Cream paper, the brightest in red and green that such papers are; white paper with much of its brightener. */
const CREAM: Lab = { l: 98, a: 0, b: 7 };
const WHITE: Lab = { l: 93, a: 0.9, b: -6 };

const lightOf = ({ l, a, b }: Lab): [number, number, number] => {
  const light = linearFromLab({ l, a, b });
  return [light.r, light.g, light.b];
};

const patch = (lab: Lab, uneven = 0.02): Patch => ({ light: lightOf(lab), uneven, burnt: 0 });

/** The brightest in each channel where all of these lie. */
const brightest = (...papers: readonly Lab[]): [number, number, number] =>
  [0, 1, 2].map((k) => Math.max(...papers.map((lab) => lightOf(lab)[k]!))) as [
    number,
    number,
    number,
  ];

describe('whether a patch can be the white card', () => {
  test('white is, alone and beside cream paper that is brighter in red and green', () => {
    expect(isWhite(patch(WHITE), brightest(WHITE))).toBe(true);
    expect(isWhite(patch(WHITE), brightest(WHITE, CREAM), BESIDE_CREAM)).toBe(true);
  });

  test.each([
    ['pale pink', { l: 85, a: 14, b: 2 }],
    ['pale yellow', { l: 92, a: -2, b: 24 }],
    ['pale green', { l: 88, a: -18, b: 8 }],
    ['sky blue', { l: 82, a: -8, b: -18 }],
    ['light grey', { l: 74, a: 0, b: 0 }],
  ])('%s is not', (_name, lab) => {
    expect(isWhite(patch(lab), brightest(WHITE, CREAM), BESIDE_CREAM)).toBe(false);
  });

  test('nor is what is not even', () => {
    expect(isWhite(patch(WHITE, 0.08), brightest(WHITE))).toBe(false);
  });
});

/** A card seen whole, whose light at a place in [0, 1] across and down is as told. */
function shown(light: (x: number, y: number) => number): Patch {
  const side = 60;
  const rgb = new Uint8Array(3 * side * side);
  for (let pixel = 0; pixel < side * side; pixel++)
    rgb.fill(
      encodedByte(light((pixel % side) / side, Math.floor(pixel / side) / side)),
      3 * pixel,
      3 * pixel + 3,
    );
  return patchOf(
    { width: side, height: side, rgb, primaries: 'srgb' },
    rectangleQuad<'photo'>(0, 0, side, side),
  )!;
}

describe('how even a patch is', () => {
  test('light that falls off over a card beside a lamp leaves it even', () => {
    expect(shown((x, y) => 0.6 + 0.16 * x - 0.12 * y).uneven).toBeLessThan(0.01);
  });

  test('stripes do not, under even light or under light that falls off', () => {
    const stripe = (x: number): number => (Math.floor(10 * x) % 2 === 0 ? 0.12 : 0);
    expect(shown((x) => 0.5 + stripe(x)).uneven).toBeGreaterThan(0.08);
    expect(shown((x, y) => 0.5 + stripe(x) + 0.15 * y).uneven).toBeGreaterThan(0.08);
  });
});
