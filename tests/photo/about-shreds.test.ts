import { describe, expect, it } from 'vitest';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import { aboutShreds } from '../../server/photo/about-shreds.ts';
import type { Candidate } from '../../server/photo/find-sheets.ts';
import type { Region } from '../../server/photo/regions.ts';

const WIDTH = 500;
const SIDE = 100;
const sheet: Candidate = {
  corners: rectangleQuad<'photo'>(10, 10, SIDE, SIDE),
  area: SIDE * SIDE,
  fill: 1,
};

/** Specks five pixels wide at the given places. */
function shredsAt(places: readonly (readonly [number, number])[]): Region {
  const pixels = places.flatMap(([x, y]) =>
    Array.from({ length: 25 }, (_, i) => (y + Math.floor(i / 5)) * WIDTH + x + (i % 5)),
  );
  const xs = pixels.map((pixel) => pixel % WIDTH);
  const ys = pixels.map((pixel) => Math.floor(pixel / WIDTH));
  return {
    pixels: Int32Array.from(pixels),
    left: Math.min(...xs),
    right: Math.max(...xs),
    top: Math.min(...ys),
    bottom: Math.max(...ys),
  };
}

/** Specks all over squares of a sheet's size. */
const over = (...corners: readonly (readonly [number, number])[]): Region =>
  shredsAt(
    corners.flatMap(([left, top]) =>
      Array.from({ length: 81 }, (_, i): [number, number] => [
        left + 11.875 * (i % 9) - ((11.875 * (i % 9)) % 1),
        top + Math.floor(11.875 * Math.floor(i / 9)),
      ]),
    ),
  );

const cornersOf = (region: Region): number[][] =>
  aboutShreds([region], [sheet], SIDE * SIDE, WIDTH).map(({ corners }) => [
    Math.round(corners[0].x),
    Math.round(corners[0].y),
  ]);

describe('a guess where shreds of a sheet lie', () => {
  it('is a sheet like the nearest one, over their middle', () => {
    const [place] = cornersOf(over([200, 150]));
    expect(Math.hypot(place![0]! - 200, place![1]! - 150)).toBeLessThan(3);
  });

  it('is two sheets where they reach over two', () => {
    const places = cornersOf(over([150, 150], [262, 150]));
    expect(places).toHaveLength(2);
    expect(Math.hypot(places[0]![0]! - 150, places[0]![1]! - 150)).toBeLessThan(5);
    expect(Math.hypot(places[1]![0]! - 262, places[1]![1]! - 150)).toBeLessThan(5);
  });

  it('is none for a few specks, nor beside a sheet that was told there', () => {
    expect(cornersOf(shredsAt([[300, 300]]))).toEqual([]);
    expect(cornersOf(over([20, 20]))).toEqual([]);
  });
});
