import { expect, test } from 'vitest';
import { contrast, relativeLuminance } from '../../server/colour/contrast.ts';
import { labFromHex } from '../../server/colour/spaces.ts';

// WCAG 2.2 gives the ends of the scale (21 and 1), the curve and the three weights; the middle rows
// are the greys on either side of its 4.5 threshold on white and pure red, from those formulas by hand.
test.each([
  ['#000000', '#ffffff', 21],
  ['#ffffff', '#ffffff', 1],
  ['#767676', '#ffffff', 4.54],
  ['#777777', '#ffffff', 4.48],
  ['#ff0000', '#ffffff', 4.0],
])('%s on %s', (ink, paper, ratio) => {
  expect(contrast(labFromHex(ink), labFromHex(paper))).toBeCloseTo(ratio, 2);
  expect(contrast(labFromHex(paper), labFromHex(ink))).toBeCloseTo(ratio, 2);
});

// WCAG 2.2, 'relative luminance': L = 0.2126 R + 0.7152 G + 0.0722 B.
test.each([
  ['#ff0000', 0.2126],
  ['#00ff00', 0.7152],
  ['#0000ff', 0.0722],
])('the luminance of %s', (hex, luminance) => {
  expect(relativeLuminance(labFromHex(hex))).toBeCloseTo(luminance, 4);
});
