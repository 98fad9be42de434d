import { describe, expect, it } from 'vitest';
import { polygonArea, contains } from '../../server/geometry/polygon.ts';
import { patchAround } from '../../server/photo/patch-around.ts';
import type { Picture } from '../../server/photo/picture.ts';
import { random } from './scene.ts';

type Rgb = readonly [number, number, number];

/** A picture drawn pixel by pixel, with a little noise. */
function drawn(paint: (x: number, y: number) => Rgb): Picture {
  const chance = random(5);
  const [width, height] = [240, 180];
  const rgb = new Uint8Array(3 * width * height);
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      for (const value of paint(x + 0.5, y + 0.5))
        rgb[at++] = value + Math.round(3 * chance() - 1.5);
  return { width, height, rgb, primaries: 'srgb' };
}

const TABLE: Rgb = [150, 120, 90];
const CARD: Rgb = [232, 230, 226];

/** A card of 80 x 50 pixels about (120, 90), turned by 20 degrees: its own coordinates, from its middle. */
function onCard(x: number, y: number): readonly [number, number] {
  const [cos, sin] = [Math.cos(Math.PI / 9), Math.sin(Math.PI / 9)];
  return [cos * (x - 120) + sin * (y - 90), cos * (y - 90) - sin * (x - 120)];
}

const card = drawn((x, y) => {
  const [u, v] = onCard(x, y);
  return Math.abs(u) < 40 && Math.abs(v) < 25 ? CARD : TABLE;
});

describe('the patch around a touch', () => {
  it('is the whole card, by its four corners, wherever on it she touches', () => {
    for (const at of [
      { x: 120, y: 90 },
      { x: 95, y: 80 },
      { x: 148, y: 100 },
    ]) {
      const patch = patchAround(card, at)!;
      expect(patch.whole).toBe(true);
      for (const { x, y } of patch.corners) {
        const [u, v] = onCard(x, y);
        expect(Math.abs(Math.abs(u) - 40)).toBeLessThan(1.5);
        expect(Math.abs(Math.abs(v) - 25)).toBeLessThan(1.5);
      }
    }
  });

  it('of a round blot is a square well inside it', () => {
    const blot = drawn((x, y) => (Math.hypot(x - 100, y - 80) < 30 ? [40, 90, 110] : CARD));
    const patch = patchAround(blot, { x: 100, y: 80 })!;
    expect(patch.whole).toBe(false);
    expect(contains(patch.corners, { x: 100, y: 80 })).toBe(true);
    expect(polygonArea(patch.corners)).toBeGreaterThan(30 * 30);
    for (const { x, y } of patch.corners) expect(Math.hypot(x - 100, y - 80)).toBeLessThan(33);
  });

  it('is nothing outside the picture, at its rim, or on a grain of sand', () => {
    expect(patchAround(card, { x: -3, y: 20 })).toBeNull();
    expect(patchAround(card, { x: 240, y: 20 })).toBeNull();
    expect(patchAround(card, { x: NaN, y: 20 })).toBeNull();
    const grain = drawn((x, y) => (Math.hypot(x - 60, y - 60) < 2.5 ? [20, 20, 20] : CARD));
    expect(patchAround(grain, { x: 60, y: 60 })).toBeNull();
  });
});
