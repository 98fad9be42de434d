import { kmeans } from 'ml-kmeans';
import { describe, expect, test } from 'vitest';
import { cluster } from '../../server/colour/cluster.ts';
import { histogramOf } from '../../server/colour/histogram.ts';
import { refine } from '../../server/colour/refine.ts';
import { startsOf } from '../../server/colour/starts.ts';
import { chanceOf, normal } from './drawn.ts';

/** 2,000 points in nine heaps of uneven size. */
function heaps(seed: number): Float32Array {
  const chance = chanceOf(seed);
  const middles = Array.from({ length: 9 }, () => [
    20 + 70 * chance(),
    80 * chance() - 40,
    80 * chance() - 40,
  ]);
  const points = new Float32Array(6000);
  for (let at = 0; at < points.length; at += 3) {
    const middle = middles[Math.floor(9 * chance() ** 2)]!;
    for (let axis = 0; axis < 3; axis++) points[at + axis] = middle[axis]! + 2 * normal(chance);
  }
  return points;
}

describe('k-means', () => {
  test.each([1, 2, 3])(
    'ends within 2 percent of the best of thirty random starts (heaps of seed %i)',
    (seed) => {
      const histogram = histogramOf(heaps(seed), null);
      const rows = Array.from({ length: histogram.size }, (_, i) => [
        ...histogram.lab.subarray(3 * i, 3 * i + 3),
      ]);
      const errors = Array.from({ length: 30 }, (_, restart) => {
        const { centroids } = kmeans(rows, 6, { seed: restart, initialization: 'random' });
        return refine(
          histogram,
          centroids.map(([l, a, b]) => ({ l: l!, a: a!, b: b! })),
        ).error;
      });
      const { error } = cluster(histogram, startsOf(histogram, 6, seed), seed);
      expect(error).toBeLessThan(1.02 * Math.min(...errors));
      expect(Math.max(...errors)).toBeGreaterThan(1.02 * Math.min(...errors));
    },
  );

  test('equal points give one centre, however many are asked for', () => {
    const same = histogramOf(
      Float32Array.from({ length: 300 }, (_, at) => [50, 10, -20][at % 3]!),
      null,
    );
    const { centres, weights, error } = cluster(same, startsOf(same, 4, 1), 1);
    expect(centres).toEqual([{ l: 50, a: 10, b: -20 }]);
    expect(weights).toEqual([100]);
    expect(error).toBe(0);
  });

  test('the histogram keeps every pixel and the mean of all', () => {
    const points = heaps(4);
    const { size, lab, weight } = histogramOf(points, null);
    for (let axis = 0; axis < 3; axis++) {
      let [sum, count, direct] = [0, 0, 0];
      for (let box = 0; box < size; box++) {
        sum += weight[box]! * lab[3 * box + axis]!;
        count += weight[box]!;
      }
      for (let at = axis; at < points.length; at += 3) direct += points[at]!;
      expect(count).toBe(2000);
      expect(sum).toBeCloseTo(direct, 3);
    }
  });
});
