import { describe, expect, it } from 'vitest';
import { renderPhoto } from '../../sample-swatches/render-photo.ts';
import { squaresScene } from '../../sample-swatches/scene/make-scene.ts';
import { labFromHex } from '../../server/colour/spaces.ts';
import type { Quad } from '../../server/geometry/points.ts';
import { openPhoto } from '../../server/images/open-photo.ts';
import { evenLight } from '../../server/photo/light.ts';
import type { Overview } from '../../server/photo/find-sheets.ts';
import { middleOf } from '../../server/photo/find-sheets.ts';
import type { Picture } from '../../server/photo/picture.ts';
import { readPhoto } from '../../server/photo/read-photo.ts';
import { regionsOf } from '../../server/photo/regions.ts';
import { isWhite, patchOf } from '../../server/photo/white-card.ts';
import { brightestOf } from '../../server/photo/white-reference.ts';
import { withoutWhiskers } from '../../server/photo/without-whiskers.ts';

const [WIDTH, HEIGHT] = [180, 120];

/** What lies on a table, painted: 1 where it is no table. */
function seen(isThing: (x: number, y: number) => boolean): Overview {
  const of = new Uint8Array(WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) of[y * WIDTH + x] = isThing(x, y) ? 1 : 0;
  const things = { width: WIDTH, height: HEIGHT, of };
  // Only what withoutWhiskers looks at.
  return { things, unclear: [], cutOff: regionsOf(things, 20) } as unknown as Overview;
}

function isSquare(x: number, y: number, left: number, top: number): boolean {
  return x >= left && x < left + 40 && y >= top && y < top + 40;
}

describe('squares that a line of the table has caught', () => {
  it('come free of a seam that runs through them and out of the picture', () => {
    const found = withoutWhiskers(
      seen((x, y) => isSquare(x, y, 20, 30) || isSquare(x, y, 100, 35) || Math.abs(y - 52) <= 1),
    );
    const middles = found.map(({ corners }) => middleOf(corners)).sort((p, q) => p.x - q.x);
    expect(middles).toHaveLength(2);
    expect(Math.hypot(middles[0]!.x - 40, middles[0]!.y - 50)).toBeLessThan(1);
    expect(Math.hypot(middles[1]!.x - 120, middles[1]!.y - 55)).toBeLessThan(1);
    for (const { area } of found) expect(Math.abs(area - 1600)).toBeLessThan(120);
  });

  it('come apart when a shadow joins them, and are not taken for one oblong card', () => {
    const found = withoutWhiskers(
      seen(
        (x, y) =>
          isSquare(x, y, 40, 30) ||
          isSquare(x, y, 88, 32) ||
          (x > 60 && x < 100 && y > 46 && y < 54),
      ),
    );
    expect(found).toHaveLength(2);
  });

  it('a thing that reaches out of the picture itself stays outside', () => {
    expect(withoutWhiskers(seen((x, y) => isSquare(x, y, -10, 40)))).toEqual([]);
  });

  it('eight squares and the white card are found on boards, where half of them were lost', async () => {
    const colours = [
      '#2d6f77',
      '#3f8f82',
      '#7c4a86',
      '#8e6ab0',
      '#123a2e',
      '#0f4636',
      '#a87a76',
      '#b67f79',
    ];
    const named = colours.map((hex) => ({ name: hex, lab: labFromHex(hex) }));
    const { jpeg } = await renderPhoto(
      squaresScene(304, 'normal', named, { pixels: 1400, surface: 'wood' }),
    );
    const reading = readPhoto(await openPhoto(jpeg), { look: 'squares', sheetMillimetres: null });
    expect(reading.sheets).toHaveLength(8);
    expect(reading.white.kind).toBe('found');
  });
});

describe('the white among bright colours', () => {
  /** Grey table with a white patch and one of a given colour, in bytes. */
  function tableWith(colour: readonly [number, number, number]): Picture {
    const rgb = new Uint8Array(3 * WIDTH * HEIGHT);
    for (let y = 0; y < HEIGHT; y++)
      for (let x = 0; x < WIDTH; x++) {
        const [white, other] = [isSquare(x, y, 20, 40), isSquare(x, y, 100, 40)];
        rgb.set(white ? [212, 216, 220] : other ? colour : [120, 120, 120], 3 * (y * WIDTH + x));
      }
    return { width: WIDTH, height: HEIGHT, rgb } as Picture;
  }
  const patch: Quad<'photo'> = [
    { x: 20, y: 40 },
    { x: 60, y: 40 },
    { x: 60, y: 80 },
    { x: 20, y: 80 },
  ] as unknown as Quad<'photo'>;

  it.each([
    ['coral', [255, 110, 100]],
    ['sky blue', [110, 190, 255]],
  ] as const)('is white beside %s, which outshines it in one channel', (_name, colour) => {
    const picture = tableWith(colour);
    const brightest = brightestOf(picture, evenLight(picture));
    expect(isWhite(patchOf(picture, patch)!, brightest)).toBe(true);
  });
});
