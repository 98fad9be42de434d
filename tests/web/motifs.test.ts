import { expect, test } from 'vitest';
import type { Spot } from '../../server/guide/drawing.ts';
import { writtenGreeting } from '../../server/guide/handwriting.ts';
import { scallop, sprig } from '../../server/guide/motifs.ts';
import { greetingPath, scallopPath, sprigPath } from '../../web/layouts/motifs.ts';

const ONE = { width: 1, height: 1 };

/** Every spot of a path in its order; written apart from what draws it. */
function spotsOf(path: string): number[] {
  return [...path.matchAll(/-?\d*\.?\d+/g)].map(([figure]) => Number(figure));
}

function sameSpots(path: string, spots: readonly Spot[]): void {
  const drawn = spotsOf(path);
  expect(drawn).toHaveLength(2 * spots.length);
  spots
    .flatMap(({ x, y }) => [x, y])
    .forEach((figure, at) => expect(drawn[at]).toBeCloseTo(figure, 2.9));
}

test('the editor draws a greeting, a die cut and a stamp as the cards show them', () => {
  sameSpots(greetingPath, writtenGreeting().flat());
  sameSpots(scallopPath, scallop(0, 0, ONE));
  const { stem, leaves } = sprig(0, 0, ONE);
  sameSpots(sprigPath, [...stem, ...leaves.flat()]);
});

test('each keeps within its square, and a die cut touches all four sides of it', () => {
  for (const path of [greetingPath, scallopPath, sprigPath])
    for (const figure of spotsOf(path)) {
      expect(figure).toBeGreaterThanOrEqual(0);
      expect(figure).toBeLessThanOrEqual(1);
    }
  const spots = scallop(0, 0, ONE);
  const reach = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
  for (const side of reach) {
    expect(Math.min(...side)).toBeCloseTo(0, 9);
    expect(Math.max(...side)).toBeCloseTo(1, 9);
  }
});
