import { describe, expect, it } from 'vitest';
import type { Quad } from '../../server/geometry/points.ts';
import { polygonArea } from '../../server/geometry/polygon.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import type { Candidate } from '../../server/photo/find-sheets.ts';
import { regionsOf } from '../../server/photo/regions.ts';
import type { Mask } from '../../server/photo/regions.ts';
import { isPlain, pixelsOutside, untold } from '../../server/photo/untold.ts';
import { drawnLab } from './drawn-lab.ts';

const [WIDTH, HEIGHT] = [420, 300];
const SIDE = 100;
const ONE = SIDE * SIDE;
const box = (x: number, y: number, width = SIDE, height = SIDE): Quad<'photo'> =>
  rectangleQuad<'photo'>(x, y, width, height);
const sheet = (corners: Quad<'photo'>): Candidate => ({
  corners,
  fill: 1,
  area: polygonArea(corners),
});

function thingsOf(...boxes: readonly Quad<'photo'>[]): { things: Mask } {
  const of = new Uint8Array(WIDTH * HEIGHT);
  for (const [from, , to] of boxes)
    for (let y = Math.max(0, from.y); y < Math.min(HEIGHT, to.y); y++)
      of.fill(1, y * WIDTH + Math.max(0, from.x), y * WIDTH + Math.min(WIDTH, to.x));
  return { things: { width: WIDTH, height: HEIGHT, of } };
}

describe('what nothing that was told accounts for', () => {
  const [a, b, c] = [box(20, 20), box(150, 20), box(280, 20)];

  it('is nothing where every sheet was told, though shadows and gaps between them are no table', () => {
    const seen = thingsOf(box(17, 17, 366, 106));
    expect(untold(seen, [a, b, c], [sheet(a)], ONE)).toEqual([]);
  });

  it('is a place of a sheet’s size for one among others that has grown together with them', () => {
    const seen = thingsOf(box(17, 17, 366, 106));
    const [place, ...more] = untold(seen, [a, c], [sheet(a), sheet(c)], ONE);
    expect(more).toEqual([]);
    expect(Math.abs(place!.corners[0].x - b[0].x)).toBeLessThan(12);
    expect(Math.abs(place!.corners[0].y - b[0].y)).toBeLessThan(12);
    expect(Math.abs(place!.area / ONE - 1)).toBeLessThan(0.05);
  });

  it('is a place for each of two that lie side by side', () => {
    const places = untold(thingsOf(a, box(150, 20, 230, 100)), [a], [sheet(a)], ONE);
    expect(places).toHaveLength(2);
  });

  it('reaches out of the picture where the sheet does', () => {
    const [place] = untold(thingsOf(a, box(360, 150)), [a], [sheet(a)], ONE);
    expect(Math.max(...place!.corners.map(({ x }) => x))).toBeGreaterThan(WIDTH + 6);
  });

  it('is none for what is narrower or smaller than a good part of a sheet, nor without any sheet', () => {
    expect(untold(thingsOf(a, box(150, 150, 240, 24)), [a], [sheet(a)], ONE)).toEqual([]);
    expect(untold(thingsOf(a, box(150, 150, 40, 40)), [a], [sheet(a)], ONE)).toEqual([]);
    expect(untold(thingsOf(a, b), [], [], ONE)).toEqual([]);
  });
});

describe('pixels of a thing outside of what was told', () => {
  it('are those that lie in no quad', () => {
    const { things } = thingsOf(box(0, 50, 120, SIDE));
    const [region] = regionsOf(things, 10);
    expect(pixelsOutside(region!, WIDTH, [box(20, 50)])).toBeLessThan(0.25 * ONE);
    expect(pixelsOutside(region!, WIDTH, [box(20, 50)])).toBeGreaterThan(0.1 * ONE);
    expect(pixelsOutside(region!, WIDTH, [])).toBeCloseTo(1.2 * ONE, -3);
  });
});

describe('a card', () => {
  const corners = box(30, 30, 60, 60);
  const print = [0, 1, 2].map((k) => ({
    corners: box(36 + 18 * k, 30, 9, 60),
    colour: [40, 20, 0] as const,
  }));
  const card = { corners, colour: [94, 0, -3] as const };

  it('is plain, and a print is not', () => {
    expect(isPlain(drawnLab(120, 120, [60, 0, 0], [card]), corners)).toBe(true);
    expect(isPlain(drawnLab(120, 120, [60, 0, 0], [card, ...print]), corners)).toBe(false);
  });
});
