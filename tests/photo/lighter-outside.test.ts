import { describe, expect, it } from 'vitest';
import { besideShadow, lighterOutside } from '../../server/photo/lighter-outside.ts';
import type { Picture } from '../../server/photo/picture.ts';
import type { SideGuess } from '../../server/photo/side-lines.ts';

/** A picture of upright bands: their grey values from left to right, each so many pixels wide. */
function bands(of: readonly (readonly [value: number, wide: number])[]): Picture {
  const row = of.flatMap(([value, wide]) => new Array<number>(wide).fill(value));
  const [width, height] = [row.length, 100];
  const rgb = new Uint8Array(3 * width * height);
  for (let at = 0; at < rgb.length; at++) rgb[at] = row[Math.floor(at / 3) % width]!;
  return { width, height, rgb, primaries: 'srgb' };
}

/** The right side of a sheet that ends at x; it runs downwards, so that the sheet lies to its right. */
const sideAt = (x: number, out = x): SideGuess => ({
  from: { x, y: 5 },
  to: { x, y: 95 },
  out,
  borne: 1,
  strength: 20,
});

describe('whether it gets lighter across the side of a sheet', () => {
  const picture = bands([
    [160, 40],
    [90, 4],
    [150, 40],
  ]);

  it('gets darker from the paper into its shadow and lighter out of it', () => {
    expect(lighterOutside(picture, sideAt(40))).toBe(-1);
    expect(lighterOutside(picture, sideAt(44))).toBe(1);
    expect(lighterOutside(picture, sideAt(20))).toBe(0);
  });

  it('tells the edge of the paper from the end of its shadow', () => {
    const edges = [sideAt(44), sideAt(40), sideAt(20)];
    expect(besideShadow(picture, edges, 8)).toEqual([-1, 1, 0]);
  });

  it('takes nothing wider for a shadow than it is told', () => {
    expect(besideShadow(picture, [sideAt(44), sideAt(40)], 3)).toEqual([0, 0]);
  });

  it('says nothing where paper lies dark on a lighter table', () => {
    const dark = bands([
      [60, 40],
      [90, 4],
      [150, 40],
    ]);
    expect(besideShadow(dark, [sideAt(44), sideAt(40)], 8)).toEqual([0, 0]);
  });
});
