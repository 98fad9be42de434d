import { describe, expect, it } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import type { Lab, LabImage } from '../../server/colour/lab.ts';
import type { Labels } from '../../server/colour/label-pixels.ts';
import { strokeHue } from '../../server/colour/stroke-hue.ts';

const PAPER: Lab = { l: 92, a: 2, b: 8 };
const INK: Lab = { l: 38, a: 30, b: -36 };
const SIDE = 60;

/** Lines one pixel wide, five apart; lightness is sharp, a and b are blurred over the neighbours as 4:2:0 blurs them. */
function lines(): { image: LabImage; labels: Labels } {
  const isInk = (x: number): boolean => x % 5 === 2;
  const lab = new Float32Array(3 * SIDE * SIDE);
  const of = new Uint8Array(SIDE * SIDE);
  for (let y = 0; y < SIDE; y++)
    for (let x = 0; x < SIDE; x++) {
      const pixel = y * SIDE + x;
      const part = isInk(x) ? 0.5 : isInk(x - 1) || isInk(x + 1) ? 0.25 : 0;
      of[pixel] = isInk(x) ? 1 : 0;
      lab[3 * pixel] = isInk(x) ? INK.l : PAPER.l;
      lab[3 * pixel + 1] = PAPER.a + part * (INK.a - PAPER.a);
      lab[3 * pixel + 2] = PAPER.b + part * (INK.b - PAPER.b);
    }
  return { image: { width: SIDE, height: SIDE, lab }, labels: { width: SIDE, height: SIDE, of } };
}

describe('the hue of a colour that shows in nothing but thin strokes', () => {
  it('is that of the ink, though every pixel shows it half mixed with the paper', () => {
    const { image, labels } = lines();
    const seen = { l: INK.l, a: (INK.a + PAPER.a) / 2, b: (INK.b + PAPER.b) / 2 };
    expect(difference(seen, INK)).toBeGreaterThan(8);
    expect(difference(strokeHue(image, labels, [PAPER, seen], 1), INK)).toBeLessThan(0.5);
  });

  it('is left alone where lightness does not tell the stroke from what lies beside it', () => {
    const { image, labels } = lines();
    const pale = { ...INK, l: PAPER.l - 6 };
    expect(strokeHue(image, labels, [PAPER, pale], 1)).toEqual(pale);
  });
});
