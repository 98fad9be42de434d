import { describe, expect, test } from 'vitest';
import { bytesOfLinear } from '../../server/colour/spaces.ts';
import type { Quad } from '../../server/geometry/points.ts';
import type { LightField } from '../../server/photo/light.ts';
import type { OpenedPixels, Picture } from '../../server/photo/picture.ts';
import { straightTones, weighed } from '../../server/photo/straight-tones.ts';
import { bendAt, straightBytes } from '../../server/photo/tone-curve.ts';
import { bendOf, toneTold } from '../../server/photo/tone-told.ts';
import { chanceOf, normal } from '../colour/drawn.ts';

const WIDTH = 400;
const HEIGHT = 300;
/** Two sheets of chequered paper beside each other. */
const SHEETS: readonly Quad<'photo'>[] = [20, 210].map((left): Quad<'photo'> => [
  { x: left, y: 60 },
  { x: left + 170, y: 60 },
  { x: left + 170, y: 230 },
  { x: left, y: 230 },
]);
/** Linear light of what is printed on each, a light and a dark colour and one between. */
const INKS = [
  [0.82, 0.8, 0.74],
  [0.05, 0.07, 0.1],
  [0.35, 0.2, 0.15],
] as const;

const EVEN: LightField = {
  of: [new Float64Array(6), new Float64Array(6), new Float64Array(6)],
  range: 2,
  error: 0.02,
  tint: 0.01,
  pressed: false,
  width: WIDTH,
  height: HEIGHT,
};

/** As a window lights a table, the right half; the file is developed by a curve over encoded values. */
function lit(curve: (encoded: number) => number, fall = 0.7): Picture {
  const chance = chanceOf(3);
  const light = new Float32Array(3 * WIDTH * HEIGHT);
  for (let y = 0, at = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) {
      const ink = INKS[(Math.floor(x / 22) + Math.floor(y / 22)) % 3]!;
      const by = 0.85 * Math.exp((-fall * x) / WIDTH - (0.3 * fall * y) / HEIGHT);
      for (let k = 0; k < 3; k++, at++) light[at] = ink[k]! * by * (1 + 0.02 * normal(chance));
    }
  const rgb = bytesOfLinear(light);
  const developed = Uint8Array.from({ length: 256 }, (_, byte) =>
    Math.round(255 * curve(byte / 255)),
  );
  for (let at = 0; at < rgb.length; at++) rgb[at] = developed[rgb[at]!]!;
  return { width: WIDTH, height: HEIGHT, rgb, primaries: 'srgb' };
}

const straight = (encoded: number): number => encoded;

/** The curve by which `straightBytes` of that strength makes a file straight, turned round. */
function bentBy(strength: number): (encoded: number) => number {
  const table = straightBytes(strength);
  return (encoded) => {
    const byte = table.findIndex((value) => value >= 255 * encoded - 0.5);
    return (byte < 0 ? 255 : byte) / 255;
  };
}

/** An S of another make: a parabola's bulge on the encoded value. */
const otherS = (encoded: number): number =>
  encoded + 0.45 * encoded * (1 - encoded) * (2 * encoded - 0.8);

const opened = (preview: Picture, developed = false): OpenedPixels => ({
  preview,
  full: preview,
  scale: 1,
  developed,
});

describe('tones that were bent to please', () => {
  test('a straight file is told to be straight', () => {
    const told = toneTold(lit(straight), SHEETS, EVEN)!;
    expect(Math.abs(told.strength)).toBeLessThan(0.1);
    expect(told.error).toBeLessThan(0.2);
  });

  test.each([0.3, 0.6, 0.9])('a bend of strength %d is read off the sheets', (strength) => {
    const told = toneTold(lit(bentBy(strength)), SHEETS, EVEN)!;
    expect(Math.abs(told.strength - strength)).toBeLessThan(0.15);
  });

  test('in even light nothing is told', () => {
    expect(toneTold(lit(bentBy(0.6), 0.01), SHEETS, EVEN)).toBeNull();
  });

  test.each([
    ['of the known shape', bentBy(0.6), 0.4],
    ['of another make', otherS, 0.8],
  ])('of a bend %s no more is left than a part', (_name, curve, part) => {
    const { photo, bend } = straightTones(opened(lit(curve)), SHEETS, EVEN);
    expect(bend).toBeGreaterThan(0.15);
    const off = (picture: Picture): number =>
      Math.abs(darkOverLight(picture) - Math.log(0.07 / 0.8));
    const before = off(lit(curve));
    expect(before).toBeGreaterThan(0.2);
    expect(off(photo.preview)).toBeLessThan(part * before);
  });

  test('a file that names its camera, and one lit like a scan, stay as they are', () => {
    const photo = opened(lit(bentBy(0.6)), true);
    expect(straightTones(photo, SHEETS, EVEN)).toEqual({ photo, bend: 0, left: 0 });
    const scan = opened(lit(bentBy(0.6)));
    expect(straightTones(scan, SHEETS, { ...EVEN, range: 1.05 }).photo).toBe(scan);
  });

  test('where nothing is told, the taste that may be in the colours is stated', () => {
    const photo = opened(lit(bentBy(0.6), 0.01));
    const { bend, left } = straightTones(photo, SHEETS, EVEN);
    expect(bend).toBe(0);
    expect(left).toBeGreaterThan(0.3);
    expect(straightTones(opened(lit(straight)), SHEETS, EVEN).left).toBeLessThan(0.15);
  });
});

/** The logarithm of the dark ink's light over the light one's, green, in cells at equal places of the fall-off. */
function darkOverLight({ rgb }: Picture): number {
  const mean = (ink: number): number => {
    let [sum, count] = [0, 0];
    for (let y = 70; y < 220; y++)
      for (let x = 30; x < 370; x++) {
        if ((Math.floor(x / 22) + Math.floor(y / 22)) % 3 !== ink) continue;
        sum += Math.log(((rgb[3 * (y * WIDTH + x) + 1]! / 255 + 0.055) / 1.055) ** 2.4);
        count++;
      }
    return sum / count;
  };
  return mean(1) - mean(0);
}

describe('the curve', () => {
  test('rises all the way, keeps both ends, and does nothing at no strength', () => {
    expect([...straightBytes(0)]).toEqual(Array.from({ length: 256 }, (_, byte) => byte));
    for (const strength of [0.3, 1]) {
      const table = straightBytes(strength);
      expect([table[0], table[255]]).toEqual([0, 255]);
      for (let byte = 1; byte < 256; byte++)
        expect(table[byte]).toBeGreaterThanOrEqual(table[byte - 1]!);
    }
  });

  test('spreads the deep tones and rolls the lights off, as the greys of real photos do', () => {
    expect(bendAt(0.2)).toBeGreaterThan(0.25);
    expect(bendAt(0.8)).toBeLessThan(-0.25);
  });
});

describe('weighing what is told', () => {
  test('what is told surely stands, what is not leans to the usual', () => {
    expect(weighed({ strength: 0.4, error: 0.03 }).strength).toBeCloseTo(0.4, 2);
    expect(weighed({ strength: 0.4, error: 0.03 }).bent).toBeGreaterThan(0.99);
    expect(weighed({ strength: 0, error: 0.05 }).bent).toBeLessThan(0.02);
    const unsure = weighed({ strength: 0.2, error: 0.25 });
    expect(unsure.strength).toBeGreaterThan(0.2);
    expect(unsure.bent).toBeGreaterThan(0.1);
    expect(unsure.bent).toBeLessThan(0.6);
  });

  test('one sheet of one colour, or steepnesses that say nothing, tell nothing', () => {
    expect(bendOf([[{ level: 0.5, steep: 1, error: 0.1 }]])).toBeNull();
    const vague = [0.3, 0.6].map((level) => ({ level, steep: 1, error: 0.5 }));
    expect(bendOf([vague, vague, vague, vague])).toBeNull();
  });
});
