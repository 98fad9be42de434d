import { converter } from 'culori';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bytesOfLab,
  bytesOfLinear,
  hexFromLab,
  labFromCss,
  labFromHex,
  labFromLinear,
  labOfBytes,
  labOfLinear,
  linearFromLab,
  linearOfBytes,
  linearOfLab,
} from '../../server/colour/spaces.ts';
import { Refusal } from '../../server/refusals/refusal.ts';

/** CIELAB (D65) of the sRGB primaries and secondaries, from IEC 61966-2-1's matrix and CIE 15, to two places. */
const PUBLISHED = [
  ['white', '#ffffff', 100, 0, 0],
  ['black', '#000000', 0, 0, 0],
  ['red', '#ff0000', 53.24, 80.09, 67.2],
  ['green', '#00ff00', 87.74, -86.18, 83.18],
  ['blue', '#0000ff', 32.3, 79.19, -107.86],
  ['cyan', '#00ffff', 91.11, -48.08, -14.13],
  ['magenta', '#ff00ff', 60.32, 98.23, -60.82],
  ['yellow', '#ffff00', 97.14, -21.55, 94.48],
] as const;

const bytes = (count: number): fc.Arbitrary<Uint8Array> =>
  fc.uint8Array({ minLength: 3 * count, maxLength: 3 * count });

describe('the door to CIELAB', () => {
  test.each(PUBLISHED)('sRGB %s', (_name, hex, l, a, b) => {
    const lab = labFromHex(hex);
    expect(Math.abs(lab.l - l)).toBeLessThan(0.015);
    expect(Math.abs(lab.a - a)).toBeLessThan(0.03);
    expect(Math.abs(lab.b - b)).toBeLessThan(0.03);
  });

  // IEC 61966-2-1: the curve is a line of slope 12.92 up to 0.04045, then ((v + 0.055) / 1.055)^2.4.
  test.each([0, 5, 10, 11, 12, 64, 128, 200, 255])('the sRGB curve at byte %i', (byte) => {
    const v = byte / 255;
    const light = v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
    const [r] = linearOfBytes(Uint8Array.of(byte, byte, byte), 'srgb');
    expect(r).toBeCloseTo(light, 6);
  });

  // CIE 15: L* = 116 (Y/Yn)^(1/3) - 16, so 18.42 % of the white's light is L* 50.0.
  test('a grey of 18.42 % of the light has a lightness of 50', () => {
    expect(labFromLinear({ r: 0.18419, g: 0.18419, b: 0.18419 }).l).toBeCloseTo(50, 2);
  });

  test('hex goes there and back', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), (number) => {
        const hex = `#${number.toString(16).padStart(6, '0')}`;
        expect(hexFromLab(labFromHex(hex))).toBe(hex);
      }),
      { seed: 1 },
    );
  });

  test('a colour beyond sRGB is cut off at its edge, not wrapped', () => {
    expect(hexFromLab({ l: 55, a: 120, b: 90 })).toMatch(/^#ff00/);
  });

  test('CSS names and functions are read', () => {
    expect(labFromCss('teal')).toEqual(labFromHex('#008080'));
    expect(labFromCss('rgb(0 128 128)')).toEqual(labFromHex('#008080'));
  });

  test.each(['', 'tealish', '#12', 'rgb('])('what is no colour is refused: "%s"', (text) => {
    expect(() => labFromCss(text)).toThrow(Refusal);
  });

  test('a hex without its sign is refused with the mend', () => {
    expect(() => labFromHex('008080')).toThrow(/Expected a colour like #2a6f77/);
  });
});

describe('whole pictures at once', () => {
  test.each([
    ['srgb', 'rgb'],
    ['display-p3', 'p3'],
  ] as const)('%s bytes come out as culori says, to 0.02', (primaries, mode) => {
    const toLab = converter('lab65');
    fc.assert(
      fc.property(bytes(8), (rgb) => {
        const lab = labOfBytes(rgb, primaries);
        for (let at = 0; at < rgb.length; at += 3) {
          const [r, g, b] = [rgb[at]! / 255, rgb[at + 1]! / 255, rgb[at + 2]! / 255];
          const exact = toLab({ mode, r, g, b });
          expect(Math.abs(lab[at]! - exact.l)).toBeLessThan(0.02);
          expect(Math.abs(lab[at + 1]! - exact.a)).toBeLessThan(0.02);
          expect(Math.abs(lab[at + 2]! - exact.b)).toBeLessThan(0.02);
        }
      }),
      { seed: 1 },
    );
  });

  test('saturated Display P3 keeps its colour beyond sRGB', () => {
    const red = labOfBytes(Uint8Array.of(255, 0, 0), 'display-p3');
    const srgbRed = labFromHex('#ff0000');
    expect(red[1]!).toBeGreaterThan(srgbRed.a + 10);
    const light = linearOfBytes(Uint8Array.of(255, 0, 0), 'display-p3');
    expect(light[1]!).toBeLessThan(0);
  });

  test('linear light, CIELAB and bytes agree on the way back, to one step', () => {
    fc.assert(
      fc.property(bytes(8), (rgb) => {
        const lab = labOfBytes(rgb, 'srgb');
        const light = linearOfBytes(rgb, 'srgb');
        const again = labOfLinear(light, 'srgb');
        const returned = linearOfLab(lab);
        const [fromLab, fromLight] = [bytesOfLab(lab), bytesOfLinear(light)];
        for (let at = 0; at < rgb.length; at++) {
          expect(Math.abs(again[at]! - lab[at]!)).toBeLessThan(0.01);
          expect(Math.abs(returned[at]! - light[at]!)).toBeLessThan(2e-4);
          expect(Math.abs(fromLab[at]! - rgb[at]!)).toBeLessThanOrEqual(1);
          expect(Math.abs(fromLight[at]! - rgb[at]!)).toBeLessThanOrEqual(1);
        }
      }),
      { seed: 1 },
    );
  });

  test('one colour and a picture of it agree in both directions', () => {
    const lab = { l: 42, a: 18, b: -31 };
    const light = linearFromLab(lab);
    const bulk = linearOfLab(Float32Array.of(lab.l, lab.a, lab.b));
    expect(bulk[0]!).toBeCloseTo(light.r, 5);
    expect(bulk[1]!).toBeCloseTo(light.g, 5);
    expect(bulk[2]!).toBeCloseTo(light.b, 5);
    const back = labFromLinear(light);
    expect(back.l).toBeCloseTo(lab.l, 9);
    expect(back.b).toBeCloseTo(lab.b, 9);
  });
});
