import { expect, test } from 'vitest';
import { labFromHex } from '../../server/colour/spaces.ts';
import { onScreen } from '../../web/supplies/on-screen.ts';

// IEC 61966-2-1: the primaries are 1 in one channel of linear light and 0 in the others; white is 1 in all.
test.each([
  ['#ff0000', [1, 0, 0]],
  ['#00ff00', [0, 1, 0]],
  ['#0000ff', [0, 0, 1]],
  ['#ffffff', [1, 1, 1]],
  ['#000000', [0, 0, 0]],
])('%s is shown as itself', (hex, light) => {
  const { l, a, b } = labFromHex(hex);
  const parts = /^color\(srgb-linear (.+)\)$/
    .exec(onScreen([l, a, b]))![1]!
    .split(' ')
    .map(Number);
  parts.forEach((part, at) => expect(Math.abs(part - light[at]!)).toBeLessThan(0.002));
});
