import { describe, expect, it } from 'vitest';
import { linearFromLab } from '../../server/colour/spaces.ts';
import { colourUncertainty } from '../../server/colour/colour-uncertainty.ts';
import { bytesOfLinear } from '../../server/colour/spaces.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import { correctedWhite, whiteOf } from '../../server/photo/correction.ts';
import { lightAt, lightOnTable } from '../../server/photo/light.ts';
import type { Picture } from '../../server/photo/picture.ts';

const [WIDTH, HEIGHT] = [800, 600];

/** Light that falls off to the right by a half. */
const falling = (x: number): number => 1 - (0.5 * x) / WIDTH;

/** A sheet of bluish paper on a brown carpet, under that light. */
function paperOnCarpet(): Picture {
  const light = new Float32Array(3 * WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) {
      const paper = x > 160 && y > 120 && x < 640;
      const colour = paper ? [0.7, 0.75, 0.9] : [0.2, 0.13, 0.08];
      colour.forEach((value, k) => (light[3 * (y * WIDTH + x) + k] = value * falling(x)));
    }
  return { width: WIDTH, height: HEIGHT, rgb: bytesOfLinear(light), primaries: 'srgb' };
}

describe('the light over a photo', () => {
  it.each([
    ['both taken for table', true, null],
    ['the paper known as white', false, rectangleQuad<'photo'>(380, 300, 60, 60)],
  ])('is read off a carpet with a sheet of paper on it: %s', (_, all, white) => {
    const picture = paperOnCarpet();
    const reached = new Uint8Array(WIDTH * HEIGHT).map((_value, at) => {
      const x = at % WIDTH;
      const y = Math.floor(at / WIDTH);
      return all || x < 150 || x > 650 || y < 110 ? 1 : 0;
    });
    const field = lightOnTable(picture, reached, white);
    for (const [x, y] of [
      [200, 200],
      [400, 500],
      [600, 300],
    ] as const) {
      const told = lightAt(field, x, y)[1] / lightAt(field, 400, 300)[1];
      expect(told / (falling(x) / falling(400))).toBeCloseTo(1, 1);
      expect(Math.abs(told / (falling(x) / falling(400)) - 1)).toBeLessThan(0.03);
    }
  });
});

describe('a picture that a camera developed', () => {
  it('is lifted by less than a scan whose white is as dark', () => {
    const dark = [0.55, 0.57, 0.65] as const;
    const scanned = correctedWhite(whiteOf([1, 1, 1], dark, false));
    const developed = correctedWhite(whiteOf([0.55, 0.57, 0.65], dark, true));
    expect(scanned.l).toBeGreaterThan(94);
    expect(developed.l).toBeLessThan(90);
    expect(Math.hypot(developed.a - 0.3, developed.b + 5)).toBeLessThan(0.5);
  });

  it('is surer of colours near white than of dark and lively ones, and a scan of all', () => {
    const error = { noise: 1, field: 0.7, reference: 1.2 };
    const camera = { white: { l: 88, a: 0, b: -4 } };
    const pale = { l: 80, a: 0, b: 0 };
    const dark = { l: 30, a: 0, b: 0 };
    const stated = (lab: typeof pale, developed: boolean): number =>
      colourUncertainty(lab, 900, developed ? { ...error, camera } : error);
    for (const lab of [pale, dark]) expect(stated(lab, true)).toBeGreaterThan(stated(lab, false));
    const growth = stated(dark, true) / stated(pale, true);
    expect(growth).toBeGreaterThan(1.2 * (stated(dark, false) / stated(pale, false)));
  });
});

describe('a photo', () => {
  it('without a card takes the lightest thing for anything from white to cream, with half of the hue that is shown', () => {
    const taken = (b: number): number => {
      const { r, g, b: blue } = linearFromLab({ l: 80, a: 0.3, b });
      return whiteOf([1, 1, 1], [r, g, blue], false, 'lightest').lab.b;
    };
    expect(taken(1)).toBeCloseTo(1, 0);
    expect(taken(9)).toBeGreaterThan(4);
    expect(taken(9)).toBeLessThan(7);
    expect(taken(-9)).toBeLessThan(-3);
    // A coloured thing is no paper, whatever the light.
    expect(taken(60)).toBeLessThan(9.5);
    expect(whiteOf([1, 1, 1], [0.6, 0.6, 0.6], false, 'card').lab.b).toBeLessThan(-3);
  });
});
