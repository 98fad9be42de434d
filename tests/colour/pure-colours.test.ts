import { describe, expect, test } from 'vitest';
import { labDistance } from '../../server/colour/difference.ts';
import { flatPixels } from '../../server/colour/flat-pixels.ts';
import { insidePixels } from '../../server/colour/insides.ts';
import { labelPixels } from '../../server/colour/label-pixels.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { pureColours } from '../../server/colour/pure-colours.ts';
import { drawn } from './drawn.ts';

const GROUND: Lab = { l: 90, a: 10, b: 0 };
const GREY: Lab = { l: 60, a: 0, b: 0 };
const BLUE: Lab = { l: 66, a: -10, b: -14 };

/** Grey discs on a ground, every other with a blue spot that no colour of the palette stands for. */
const spotted = (x: number, y: number): Lab => {
  const [u, v] = [((5 * x) % 1) - 0.5, ((5 * y) % 1) - 0.5];
  if (Math.hypot(u, v) > 0.3) return GROUND;
  return Math.floor(5 * x) % 2 === 0 && Math.hypot(u, v) < 0.12 ? BLUE : GREY;
};

function read(known: readonly Lab[], noise: number): Lab[] {
  const image = drawn(spotted, { size: 180, noise });
  const flat = flatPixels(image, noise);
  const labels = labelPixels(image, known, flat);
  return pureColours(image, labels, insidePixels(labels, flat), known);
}

describe('a colour as the middle of its shapes shows it', () => {
  test.each([0.2, 1, 2])('what strays within a shape does not count, noise %d', (noise) => {
    // As k-means has them: the mean of the discs, spots and all.
    const known = [GROUND, { l: 60.6, a: -1, b: -1.4 }];
    const [ground, grey] = read(known, noise) as [Lab, Lab];
    expect(labDistance(ground, GROUND)).toBeLessThan(0.1);
    expect(labDistance(grey, GREY)).toBeLessThan(0.5);
    expect(labDistance(known[1]!, GREY)).toBeGreaterThan(1.5);
  });

  test('a colour without an inside stays as it was', () => {
    const nowhere = { l: 20, a: 40, b: 40 };
    expect(read([GROUND, GREY, nowhere], 0.5)[2]).toEqual(nowhere);
  });
});
