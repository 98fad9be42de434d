import { expect, test } from 'vitest';
import { encodedByte, linearOfByte } from '../../server/colour/curves.ts';
import type { Gains } from '../../server/photo/correction.ts';
import { pictureOf } from '../../server/photo/flatten.ts';
import { straighten } from '../../server/photo/straighten.ts';
import type { Picture } from '../../server/photo/picture.ts';

const IDENTITY = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** One gain a channel, the same all over. */
function evenGains(width: number, height: number, gain: readonly number[]): Gains {
  return { width, height, at: Float32Array.from({ length: 3 * 81 }, (_, at) => gain[at % 3]!) };
}

test('a grey of every byte is shown in the light that its gain gives it, to one byte', () => {
  const [width, height] = [256, 20];
  const rgb = Uint8Array.from({ length: 3 * width * height }, (_, at) => Math.floor(at / 3) % 256);
  for (const gain of [0.31, 0.8, 1, 1.37, 2.9]) {
    const flat = { width, height, rgb, primaries: 'srgb', rows: IDENTITY } as const;
    const shown = pictureOf(flat, evenGains(width, height, [gain, gain, gain]), null).rgb;
    for (let at = 0; at < shown.length; at++)
      expect(Math.abs(shown[at]! - encodedByte(gain * linearOfByte[rgb[at]!]!))).toBeLessThan(2);
  }
});

test('what is too light to be shown keeps its hue and its luminance', () => {
  const flat = {
    width: 16,
    height: 8,
    rgb: new Uint8Array(3 * 16 * 8).fill(0).map((_, at) => [200, 120, 60][at % 3]!),
    primaries: 'srgb',
    rows: IDENTITY,
  } as const;
  const [r, g, b] = pictureOf(flat, evenGains(16, 8, [2, 2, 2]), null).rgb;
  expect(r).toBe(255);
  expect(g! > 166 && b! > 84).toBe(true);
  const luminance = (of: readonly number[]): number =>
    0.2126 * linearOfByte[of[0]!]! +
    0.7152 * linearOfByte[of[1]!]! +
    0.0722 * linearOfByte[of[2]!]!;
  expect(luminance([r!, g!, b!])).toBeCloseTo(2 * luminance([200, 120, 60]), 2);
});

test('a sheet that lies aslant and in perspective is sampled where its homography says, to a step', () => {
  // A slope of light is what it is at any place between pixels.
  const [width, height] = [900, 700];
  const at = (x: number, y: number): number => 20 + 0.2 * (x - 0.5) + 0.05 * (y - 0.5);
  const rgb = new Uint8Array(3 * width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      rgb.fill(Math.round(at(x + 0.5, y + 0.5)), 3 * (y * width + x), 3 * (y * width + x) + 3);
  const picture: Picture = { width, height, rgb, primaries: 'srgb' };
  for (const corners of [
    [
      { x: 60, y: 40 },
      { x: 620, y: 90 },
      { x: 600, y: 660 },
      { x: 20, y: 610 },
    ],
    [
      { x: 260, y: 40 },
      { x: 560, y: 60 },
      { x: 850, y: 690 },
      { x: 10, y: 600 },
    ],
  ] as const) {
    const { rgb: flat, rows } = straighten(picture, corners, { width: 500, height: 500 });
    for (let v = 0; v < 500; v += 7)
      for (let u = 0; u < 500; u += 7) {
        const w = rows[6]! * (u + 0.5) + rows[7]! * (v + 0.5) + rows[8]!;
        const x = (rows[0]! * (u + 0.5) + rows[1]! * (v + 0.5) + rows[2]!) / w;
        const y = (rows[3]! * (u + 0.5) + rows[4]! * (v + 0.5) + rows[5]!) / w;
        expect(Math.abs(flat[3 * (500 * v + u)]! - at(x, y))).toBeLessThan(1.2);
      }
  }
});

test('an array to write into is what comes back, and no more than the size is written', () => {
  const picture: Picture = {
    width: 40,
    height: 40,
    rgb: new Uint8Array(3 * 1600).fill(77),
    primaries: 'srgb',
  };
  const corners = [
    { x: 5, y: 5 },
    { x: 35, y: 5 },
    { x: 35, y: 35 },
    { x: 5, y: 35 },
  ] as const;
  const into = new Uint8Array(3 * 900).fill(1);
  const { rgb } = straighten(picture, corners, { width: 30, height: 30 }, into);
  expect(rgb).toBe(into);
  expect(rgb.every((byte) => byte === 77)).toBe(true);
});
