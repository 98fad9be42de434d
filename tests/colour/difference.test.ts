import { differenceCiede2000 } from 'culori';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { difference, differencePerUnit, labDistance } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { anyLab } from './any-lab.ts';

type Triple = readonly [number, number, number];

/** Sharma, Wu, Dalal (2005), Table 1, doi:10.1002/col.20070. */
const SHARMA: readonly (readonly [pair: number, first: Triple, second: Triple, deltaE: number])[] =
  [
    [1, [50.0, 2.6772, -79.7751], [50.0, 0.0, -82.7485], 2.0425],
    [2, [50.0, 3.1571, -77.2803], [50.0, 0.0, -82.7485], 2.8615],
    [3, [50.0, 2.8361, -74.02], [50.0, 0.0, -82.7485], 3.4412],
    [4, [50.0, -1.3802, -84.2814], [50.0, 0.0, -82.7485], 1.0],
    [5, [50.0, -1.1848, -84.8006], [50.0, 0.0, -82.7485], 1.0],
    [6, [50.0, -0.9009, -85.5211], [50.0, 0.0, -82.7485], 1.0],
    [7, [50.0, 0.0, 0.0], [50.0, -1.0, 2.0], 2.3669],
    [8, [50.0, -1.0, 2.0], [50.0, 0.0, 0.0], 2.3669],
    [9, [50.0, 2.49, -0.001], [50.0, -2.49, 0.0009], 7.1792],
    [10, [50.0, 2.49, -0.001], [50.0, -2.49, 0.001], 7.1792],
    [11, [50.0, 2.49, -0.001], [50.0, -2.49, 0.0011], 7.2195],
    [12, [50.0, 2.49, -0.001], [50.0, -2.49, 0.0012], 7.2195],
    [13, [50.0, -0.001, 2.49], [50.0, 0.0009, -2.49], 4.8045],
    [14, [50.0, -0.001, 2.49], [50.0, 0.001, -2.49], 4.8045],
    [15, [50.0, -0.001, 2.49], [50.0, 0.0011, -2.49], 4.7461],
    [16, [50.0, 2.5, 0.0], [50.0, 0.0, -2.5], 4.3065],
    [17, [50.0, 2.5, 0.0], [73.0, 25.0, -18.0], 27.1492],
    [18, [50.0, 2.5, 0.0], [61.0, -5.0, 29.0], 22.8977],
    [19, [50.0, 2.5, 0.0], [56.0, -27.0, -3.0], 31.903],
    [20, [50.0, 2.5, 0.0], [58.0, 24.0, 15.0], 19.4535],
    [21, [50.0, 2.5, 0.0], [50.0, 3.1736, 0.5854], 1.0],
    [22, [50.0, 2.5, 0.0], [50.0, 3.2972, 0.0], 1.0],
    [23, [50.0, 2.5, 0.0], [50.0, 1.8634, 0.5757], 1.0],
    [24, [50.0, 2.5, 0.0], [50.0, 3.2592, 0.335], 1.0],
    [25, [60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
    [26, [63.0109, -31.0961, -5.8663], [62.8187, -29.7946, -4.0864], 1.263],
    [27, [61.2901, 3.7196, -5.3901], [61.4292, 2.248, -4.962], 1.8731],
    [28, [35.0831, -44.1164, 3.7933], [35.0232, -40.0716, 1.5901], 1.8645],
    [29, [22.7233, 20.0904, -46.694], [23.0331, 14.973, -42.5619], 2.0373],
    [30, [36.4612, 47.858, 18.3852], [36.2715, 50.5065, 21.2231], 1.4146],
    [31, [90.8027, -2.0831, 1.441], [91.1528, -1.6435, 0.0447], 1.4441],
    [32, [90.9257, -0.5406, -0.9208], [88.6381, -0.8985, -0.7239], 1.5381],
    [33, [6.7747, -0.2908, -2.4247], [5.8714, -0.0985, -2.2286], 0.6377],
    [34, [2.0776, 0.0795, -1.135], [0.9033, -0.0636, -0.5514], 0.9082],
  ];

const lab = ([l, a, b]: Triple): Lab => ({ l, a, b });

describe('CIEDE2000', () => {
  // Pair 14 has opposite hues (their mean hue may be taken on either side, which gives 4.7461 or
  // 4.8045): the table, and what stands here, take the second.
  test.each(SHARMA)('published pair %i', (_pair, first, second, published) => {
    expect(Math.abs(difference(lab(first), lab(second)) - published)).toBeLessThanOrEqual(1e-4);
  });

  test('is what culori works out, anywhere', () => {
    const culori = differenceCiede2000();
    fc.assert(
      fc.property(anyLab(), anyLab(), (a, b) => {
        const theirs = culori({ mode: 'lab65', ...a }, { mode: 'lab65', ...b });
        expect(Math.abs(difference(a, b) - theirs)).toBeLessThan(1e-9);
      }),
      { seed: 2, numRuns: 2000 },
    );
  });

  test('is symmetric, and 0 for equal colours only', () => {
    fc.assert(
      fc.property(anyLab(), anyLab(), (a, b) => {
        expect(difference(a, b)).toBeCloseTo(difference(b, a), 9);
        expect(difference(a, a)).toBe(0);
        if (labDistance(a, b) > 1e-6) expect(difference(a, b)).toBeGreaterThan(0);
      }),
      { seed: 1 },
    );
  });

  test('one CIELAB unit counts for less in a vivid red than in a grey, most of all along its chroma', () => {
    const grey = differencePerUnit({ l: 50, a: 0, b: 0 });
    for (const worth of grey) {
      expect(worth).toBeGreaterThan(0.8);
      expect(worth).toBeLessThan(1.6);
    }
    const [l, a, b] = differencePerUnit({ l: 50, a: 70, b: 50 });
    expect(l).toBeCloseTo(grey[0], 1);
    expect(Math.max(a, b)).toBeLessThan(0.7 * Math.min(grey[1], grey[2]));
  });
});
