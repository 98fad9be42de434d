import { describe, expect, it } from 'vitest';
import type { Quad } from '../../server/geometry/points.ts';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import { freePlaces as allPlaces } from '../../server/photo/free-places.ts';
import type { FreePlace } from '../../server/photo/free-places.ts';

/** In the rows, or beyond their ends. */
const freePlaces = (sheets: readonly Quad<'photo'>[]): FreePlace[] =>
  allPlaces(sheets).filter(({ kind }) => kind !== 'beyond');

const SIDE = 100;
const STEP = 112;
const at = (column: number, row: number): Quad<'photo'> =>
  rectangleQuad<'photo'>(50 + STEP * column, 40 + STEP * row, SIDE, SIDE);
const turned = (quad: Quad<'photo'>, degrees: number): Quad<'photo'> => {
  const [cos, sin] = [Math.cos, Math.sin].map((of) => of((degrees * Math.PI) / 180));
  return quad.map(({ x, y }) => ({
    x: cos! * x - sin! * y,
    y: sin! * x + cos! * y,
  })) as unknown as Quad<'photo'>;
};
const off = (p: Quad<'photo'>, q: Quad<'photo'>): number =>
  Math.max(...p.map((corner, i) => Math.hypot(corner.x - q[i]!.x, corner.y - q[i]!.y)));

describe('free places in the rows of sheets', () => {
  it('finds none in full rows', () => {
    expect(freePlaces([at(0, 0), at(1, 0), at(2, 0), at(0, 1), at(1, 1), at(2, 1)])).toEqual([]);
  });

  it('finds the place between two sheets of a row', () => {
    const places = freePlaces([at(0, 0), at(1, 0), at(2, 0), at(0, 1), at(2, 1)]);
    expect(places).toHaveLength(1);
    expect(places[0]!.kind).toBe('between');
    expect(off(places[0]!.corners, at(1, 1))).toBeLessThan(1e-9);
  });

  it('finds the place between two sheets of a column', () => {
    const places = freePlaces([at(0, 0), at(0, 1), at(1, 0), at(1, 2), at(0, 2)]);
    expect(places.map(({ kind }) => kind)).toEqual(['between']);
    expect(off(places[0]!.corners, at(1, 1))).toBeLessThan(1e-9);
  });

  it('finds the place that completes a corner, which lies between no two', () => {
    const places = freePlaces([at(0, 0), at(1, 0), at(0, 1)]);
    expect(places.map(({ kind }) => kind)).toEqual(['corner']);
    expect(off(places[0]!.corners, at(1, 1))).toBeLessThan(1e-9);
  });

  it('finds the places next to the ends of rows and columns, as far off as the sheets lie', () => {
    const beyond = allPlaces([at(0, 0), at(1, 0), at(0, 1), at(1, 1)]);
    expect(beyond.map(({ kind }) => kind)).toEqual(Array.from({ length: 8 }, () => 'beyond'));
    for (const wanted of [at(2, 0), at(-1, 1), at(0, 2), at(1, -1)])
      expect(Math.min(...beyond.map(({ corners }) => off(corners, wanted)))).toBeLessThan(1e-9);
  });

  it.each([-30, -8, 8, 30])('finds it as well when the camera was turned by %i degrees', (by) => {
    const sheets = [at(0, 0), at(1, 0), at(2, 0), at(0, 1), at(2, 1)];
    const places = freePlaces(sheets.map((quad) => turned(quad, by)));
    expect(places).toHaveLength(1);
    expect(off(places[0]!.corners, turned(at(1, 1), by))).toBeLessThan(1e-6);
  });

  it('makes up no rows of sheets strewn far apart', () => {
    const far = (column: number, row: number): Quad<'photo'> =>
      rectangleQuad<'photo'>(250 * column, 250 * row, SIDE, SIDE);
    expect(freePlaces([far(0, 0), far(1, 0), far(2, 0), far(0, 1), far(2, 1)])).toEqual([]);
  });

  it('says nothing of one sheet or two', () => {
    expect(freePlaces([])).toEqual([]);
    expect(freePlaces([at(0, 0), at(2, 0)])).toEqual([]);
  });
});
