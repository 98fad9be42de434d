import { describe, expect, it } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import type { Lab, LabImage } from '../../server/colour/lab.ts';
import type { Labels } from '../../server/colour/label-pixels.ts';
import { strokeHues } from '../../server/colour/stroke-hue.ts';

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
    expect(difference(strokeHues(image, labels, [PAPER, seen], [0.8, 0])[1]!, INK)).toBeLessThan(
      0.5,
    );
  });

  it('is told of several inks side by side, none of which lies on paper alone', () => {
    const OTHER: Lab = { l: 62, a: -28, b: 30 };
    const THREE = [PAPER, INK, OTHER];
    const shownAt = (x: number): number => (x % 6 < 2 ? 1 : x % 6 < 4 ? 2 : 0);
    const BLUR = [1 / 16, 4 / 16, 6 / 16, 4 / 16, 1 / 16];
    const lab = new Float32Array(3 * SIDE * SIDE);
    const of = new Uint8Array(SIDE * SIDE);
    for (let pixel = 0; pixel < of.length; pixel++) {
      const x = pixel % SIDE;
      of[pixel] = shownAt(x);
      lab[3 * pixel] = THREE[of[pixel]!]!.l;
      BLUR.forEach((part, k) => {
        const beside = THREE[shownAt(x + k - 2 + 6)]!;
        lab[3 * pixel + 1]! += part * beside.a;
        lab[3 * pixel + 2]! += part * beside.b;
      });
    }
    const seen = [PAPER, INK, OTHER].map((colour, k) =>
      k === 0 ? colour : { ...colour, a: 0.5 * colour.a, b: 0.4 * colour.b },
    );
    const read = strokeHues(
      { width: SIDE, height: SIDE, lab },
      { width: SIDE, height: SIDE, of },
      seen,
      [0.4, 0, 0],
    );
    expect(difference(seen[1]!, INK)).toBeGreaterThan(6);
    expect(difference(read[1]!, INK)).toBeLessThan(1);
    expect(difference(read[2]!, OTHER)).toBeLessThan(1);
  });

  it('is left as it was read where hue is as sharp as lightness, and where much lies inside', () => {
    const { image, labels } = lines();
    for (let pixel = 0; pixel < labels.of.length; pixel++) {
      const { a, b } = labels.of[pixel] === 1 ? INK : PAPER;
      image.lab.set([a, b], 3 * pixel + 1);
    }
    const seen = [PAPER, INK];
    expect(strokeHues(image, labels, seen, [0.8, 0])).toEqual(seen);
    expect(strokeHues(lines().image, labels, seen, [0.8, 0.3])).toEqual(seen);
  });

  it('is left alone where lightness does not tell the stroke from what lies beside it', () => {
    const { image, labels } = lines();
    const pale = { ...INK, l: PAPER.l - 6 };
    expect(strokeHues(image, labels, [PAPER, pale], [0.8, 0])).toEqual([PAPER, pale]);
  });
});
