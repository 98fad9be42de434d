import { describe, expect, test } from 'vitest';
import { linearFromLab } from '../../server/colour/spaces.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { BESIDE_CREAM, isWhite } from '../../server/photo/white-card.ts';
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
