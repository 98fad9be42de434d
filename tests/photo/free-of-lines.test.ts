import { describe, expect, it } from 'vitest';
import type { PhotoAsk } from '../../server/photo/picture.ts';
import { freeOfLines } from '../../server/photo/free-of-lines.ts';
import type { Overview } from '../../server/photo/find-sheets.ts';
import { endsAtRim } from '../../server/photo/find-sheets.ts';
import { regionsOf } from '../../server/photo/regions.ts';

const [WIDTH, HEIGHT] = [400, 300];
const ASK: PhotoAsk = { look: 'sheets', sheetMillimetres: { width: 150, height: 150 } };

/** What was seen where these pixels are no table, none of it with four clear corners. */
function seen(isThing: (x: number, y: number) => boolean): Overview {
  const of = new Uint8Array(WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++) of[y * WIDTH + x] = isThing(x, y) ? 1 : 0;
  const things = { width: WIDTH, height: HEIGHT, of };
  const regions = regionsOf(things, 20);
  const cutOff = regions.filter((region) => endsAtRim(region, things));
  const unclear = regions.filter((region) => !cutOff.includes(region));
  // Only what freeOfLines looks at.
  return {
    image: { width: WIDTH, height: HEIGHT },
    things,
    candidates: [],
    unclear,
    cutOff,
    blocks: unclear,
  } as unknown as Overview;
}

const isSheet = (x: number, y: number, left: number, top: number): boolean =>
  x >= left && x < left + 120 && y >= top && y < top + 120;
const isSeam = (_x: number, y: number): boolean => Math.abs(y - 150) <= 1;

describe('sheets that a line of the table has caught', () => {
  it('come free of a seam that runs through them and out of the picture', () => {
    const before = seen((x, y) => isSheet(x, y, 40, 90) || isSheet(x, y, 220, 80) || isSeam(x, y));
    expect(before.cutOff).toHaveLength(1);
    const { candidates, cutOff, unclear } = freeOfLines(before, ASK);
    expect([cutOff, unclear]).toEqual([[], []]);
    expect(candidates).toHaveLength(2);
    for (const { area, fill } of candidates) {
      expect(Math.abs(Math.sqrt(area) - 120)).toBeLessThan(2);
      expect(fill).toBeGreaterThan(0.97);
    }
  });

  it('come free of grain that ends in them', () => {
    const { candidates, unclear } = freeOfLines(
      seen((x, y) => isSheet(x, y, 100, 90) || (isSeam(x, y) && x > 40 && x < 300)),
      ASK,
    );
    expect(unclear).toEqual([]);
    expect(candidates).toHaveLength(1);
  });

  it('leave one that does reach out of the picture where it was', () => {
    const { candidates, cutOff } = freeOfLines(
      seen((x, y) => isSheet(x, y, 40, 90) || isSheet(x, y, 320, 80) || isSeam(x, y)),
      ASK,
    );
    expect(candidates).toHaveLength(1);
    expect(cutOff).toHaveLength(1);
    expect(cutOff[0]!.left).toBeGreaterThan(300);
  });

  it.each([
    [
      'motifs',
      (x: number, y: number): boolean =>
        isSheet(x, y, 100, 90) && (x % 30 < 6 || y % 30 < 6 || (x % 30 < 20 && y % 30 < 20)),
    ],
    [
      'a long card',
      (x: number, y: number): boolean => (x > 60 && x < 330 && y > 90 && y < 210) || isSeam(x, y),
    ],
    ['a sheet that nothing has caught', (x: number, y: number): boolean => x > 280 && y > 60],
  ])('are not made up of %s', (_, isThing) => {
    expect(freeOfLines(seen(isThing), ASK).candidates).toEqual([]);
  });
});
