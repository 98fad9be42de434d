import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { labDistance } from '../../server/colour/difference.ts';
import { earthMover } from '../../server/colour/earth-mover.ts';
import { paletteDistance } from '../../server/colour/palette-distance.ts';
import type { Palette } from '../../server/colour/palette.ts';
import { anyLab } from './any-lab.ts';

/** Any palette of one to six colours whose shares add up to 1. */
function anyPalette(): fc.Arbitrary<Palette> {
  const colour = fc.record({ lab: anyLab(), weight: fc.integer({ min: 1, max: 100 }) });
  return fc.array(colour, { minLength: 1, maxLength: 6 }).map((parts) => {
    const total = parts.reduce((sum, { weight }) => sum + weight, 0);
    return {
      tonal: false,
      colours: parts.map(({ lab, weight }) => ({
        lab,
        share: weight / total,
        role: 'accent' as const,
        uncertainty: 1,
      })),
    };
  });
}

describe('earth mover', () => {
  // Rubner, Tomasi, Guibas (2000), doi:10.1023/A:1026543900054: the worked example of their program.
  test('the published example', () => {
    const p = [
      [100, 40, 22],
      [211, 20, 2],
      [32, 190, 150],
      [2, 100, 100],
    ] as const;
    const q = [
      [0, 0, 0],
      [50, 100, 80],
      [255, 255, 255],
    ] as const;
    const distance = (i: number, j: number): number =>
      Math.hypot(...p[i]!.map((value, axis) => value - q[j]![axis]!));
    expect(earthMover([0.4, 0.3, 0.2, 0.1], [0.5, 0.3, 0.2], distance)).toBeCloseTo(160.5428, 4);
  });

  test('a heap two steps away costs two steps', () => {
    expect(earthMover([1, 0], [0, 1], (i, j) => 2 * Math.abs(i - j))).toBe(2);
  });

  test('on a line it is the area between the running sums', () => {
    const heap = fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(heap, heap, (a, b) => {
        const [from, to] = [share(a), share(b)];
        let [area, gap] = [0, 0];
        for (let place = 0; place < 5; place++) {
          gap += from[place]! - to[place]!;
          area += Math.abs(gap);
        }
        expect(earthMover(from, to, (i, j) => Math.abs(i - j))).toBeCloseTo(area, 9);
      }),
      { seed: 1 },
    );
  });

  test.each([
    ['nothing', []],
    ['no weight', [0, 0]],
    ['a negative weight', [1, -1, 2]],
  ])('%s is refused', (_name, weights) => {
    expect(() => earthMover(weights, [1], () => 1)).toThrow(/add up to more than 0/);
  });
});

describe('distance of palettes', () => {
  test('with CIELAB distance it is a metric', () => {
    fc.assert(
      fc.property(anyPalette(), anyPalette(), anyPalette(), (a, b, c) => {
        const ab = paletteDistance(a, b, labDistance);
        expect(paletteDistance(a, a, labDistance)).toBeCloseTo(0, 9);
        expect(ab).toBeGreaterThanOrEqual(0);
        expect(paletteDistance(b, a, labDistance)).toBeCloseTo(ab, 6);
        const round = paletteDistance(a, c, labDistance) + paletteDistance(c, b, labDistance);
        expect(ab).toBeLessThanOrEqual(round + 1e-6);
      }),
      { seed: 1 },
    );
  });

  test('the order of the colours does not matter', () => {
    fc.assert(
      fc.property(anyPalette(), anyPalette(), (a, b) => {
        const turned = { ...a, colours: [...a.colours].reverse() };
        expect(paletteDistance(turned, b)).toBeCloseTo(paletteDistance(a, b), 6);
      }),
      { seed: 1 },
    );
  });
});

function share(heap: readonly number[]): number[] {
  const total = heap.reduce((sum, part) => sum + part, 0);
  return total === 0 ? [1, 0, 0, 0, 0] : heap.map((part) => part / total);
}
