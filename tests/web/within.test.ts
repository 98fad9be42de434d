import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Corners } from '../../server/contract/values.ts';
import { within } from '../../web/photos/within.ts';

const slanted: Corners = [
  [100, 50],
  [300, 80],
  [280, 260],
  [90, 240],
];
const part = fc.double({ min: 0.01, max: 0.99, noNaN: true });

test('what lies between the corners is within, from whichever corner one begins', () => {
  fc.assert(
    fc.property(part, part, fc.nat(3), (u, v, turn) => {
      const [a, b, c, d] = slanted;
      const at = (axis: 0 | 1): number =>
        (1 - v) * ((1 - u) * a[axis] + u * b[axis]) + v * ((1 - u) * d[axis] + u * c[axis]);
      const turned = [...slanted.slice(turn), ...slanted.slice(0, turn)] as Corners;
      expect(within(turned, at(0), at(1))).toBe(true);
    }),
  );
});

test.each([
  ['left of it', 80, 150],
  ['right of it', 310, 150],
  ['above its slanted edge', 250, 60],
  ['below it', 200, 270],
])('what lies %s is not', (_where, x, y) => {
  expect(within(slanted, x, y)).toBe(false);
});
