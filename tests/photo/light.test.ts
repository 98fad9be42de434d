import { describe, expect, it } from 'vitest';
import { linearFromLab } from '../../server/colour/spaces.ts';
import { colourUncertainty } from '../../server/colour/colour-uncertainty.ts';
import { bytesOfLinear } from '../../server/colour/spaces.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import { correctedWhite, whiteOf } from '../../server/photo/correction.ts';
import { lightAt, lightOnTable } from '../../server/photo/light.ts';
import type { LightField } from '../../server/photo/light.ts';
import type { Picture } from '../../server/photo/picture.ts';
import { chanceOf, normal } from '../colour/drawn.ts';
import { openBeside, referenceOf } from '../../server/photo/white-reference.ts';

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

/** Bare pale table, with a little grain, under a light that falls off to `to` of itself at the right. */
function pale(to: number, bend = 1): Picture {
  const chance = chanceOf(5);
  const light = new Float32Array(3 * WIDTH * HEIGHT);
  for (let at = 0; at < light.length; at += 3) {
    const part = ((at / 3) % WIDTH) / WIDTH;
    const here = (1 - (1 - to) * part ** bend) * (1 + 0.02 * normal(chance));
    [0.7, 0.69, 0.68].forEach((value, k) => (light[at + k] = value * here));
  }
  return { width: WIDTH, height: HEIGHT, rgb: bytesOfLinear(light), primaries: 'srgb' };
}

/** Of the picture, what is table: the pixels left of `right`. */
const leftOf = (right: number): Uint8Array =>
  new Uint8Array(WIDTH * HEIGHT).map((_value, at) => (at % WIDTH < right ? 1 : 0));

describe('a picture as even as a scan', () => {
  const card = rectangleQuad<'photo'>(30, 30, 80, 80);
  const hueOpen = (picture: Picture, field: LightField, developed = false): number =>
    referenceOf(picture, field, [], card, undefined, developed).hueOpen;

  it('is one where most of it is seen, and a strip of a table at a window is none, however even', () => {
    const lid = pale(0.97);
    const scan = lightOnTable(lid, leftOf(WIDTH));
    expect(scan.pressed).toBe(true);
    expect(hueOpen(lid, scan)).toBeLessThan(1);
    expect(hueOpen(lid, scan, true)).toBe(1);

    const table = pale(0.7);
    const strip = lightOnTable(table, leftOf(0.22 * WIDTH));
    // No more differs over the strip than over a scan.
    expect(strip.range).toBeLessThan(1.08);
    expect(strip.pressed).toBe(false);
    expect(hueOpen(table, strip)).toBe(1);
    expect(strip.error).toBeGreaterThan(2 * scan.error);
    expect(strip.tint).toBeGreaterThan(scan.tint);
  });

  it.each([
    ['evenly', 1, 0.22],
    ['ever more', 2, 0.22],
    ['evenly', 1, 0.5],
    ['ever more', 2, 0.5],
  ])(
    'states what it is off by where light falls %s (%f) and a part of %f is seen',
    (_, bend, part) => {
      const { error, ...field } = lightOnTable(pale(0.7, bend), leftOf(part * WIDTH));
      const offs = Array.from({ length: 100 }, (_value, i) => (i + 0.5) / 100).map((x) =>
        Math.log(lightAt({ error, ...field }, x * WIDTH, HEIGHT / 2)[1] / (1 - 0.3 * x ** bend)),
      );
      const mean = offs.reduce((sum, off) => sum + off, 0) / offs.length;
      const spread = Math.sqrt(offs.reduce((sum, off) => sum + (off - mean) ** 2, 0) / offs.length);
      expect(spread).toBeLessThan(error);
      expect(error).toBeGreaterThan(lightOnTable(pale(0.7, bend), leftOf(WIDTH)).error);
    },
  );

  it('is none where nothing was seen at all and the light is only taken for even', () => {
    const lid = pale(0.97);
    const even = lightOnTable(lid, leftOf(0));
    expect(even.range).toBe(1);
    expect(even.pressed).toBe(false);
    expect(hueOpen(lid, even)).toBe(1);
  });
});

describe('the white of a scan that is tied to another photo', () => {
  const white = whiteOf([1, 1, 1], [0.9, 0.9, 0.95], false, 'scan');
  const scan = {
    kind: 'found',
    corners: null,
    white,
    error: 1.2,
    hueOpen: 0.45,
    burnt: 0,
  } as const;

  it('leaves the hue of what scraps differ by wholly open, and narrows its own alone', () => {
    // 1.2 x 0.45 = 0.54 of its own, beside 2 and 0.
    const tied = openBeside(scan, 2);
    expect(tied.reference).toBeCloseTo(Math.hypot(1.2, 2), 12);
    expect(tied.reference * tied.hueOpen).toBeCloseTo(Math.hypot(0.54, 2), 12);
    expect(openBeside(scan, 0).reference).toBe(1.2);
    expect(openBeside(scan, 0).hueOpen).toBeCloseTo(0.45, 12);
    const { hueOpen } = openBeside({ ...scan, hueOpen: 1 }, 2);
    expect(hueOpen).toBeCloseTo(1, 12);
  });

  it('states more for a colour that it ties badly than if all of that were white paper on a scan', () => {
    const stated = (reference: number, hueOpen: number): number =>
      colourUncertainty({ l: 70, a: 10, b: 20 }, 900, { noise: 0, field: 0, reference, hueOpen });
    const { reference, hueOpen } = openBeside(scan, 3);
    expect(stated(reference, hueOpen)).toBeGreaterThan(1.2 * stated(reference, scan.hueOpen));
    expect(stated(reference, hueOpen)).toBeLessThan(stated(reference, 1));
  });
});
