import { describe, expect, it } from 'vitest';
import { byReading } from '../../server/photo/find-sheets.ts';
import { turnOfRows, turned } from '../../server/photo/turn-of-rows.ts';
import type { PhotoPoint, Quad } from '../../server/geometry/points.ts';

const [COLUMNS, ROWS] = [8, 6];
/** Where squares of 60 lie, their rows and columns unevenly apart. */
const ACROSS = [0, 66, 131, 220, 284, 350, 437, 502];
const DOWN = [0, 70, 134, 219, 284, 352];

function places(turn: number): PhotoPoint[] {
  return Array.from({ length: COLUMNS * ROWS }, (_, at) =>
    turned({ x: ACROSS[at % COLUMNS]!, y: DOWN[Math.floor(at / COLUMNS)]! }, turn),
  );
}

function squareAt({ x, y }: PhotoPoint, at: number): { at: number; corners: Quad<'photo'> } {
  const corner = (dx: number, dy: number): PhotoPoint => ({ x: x + 30 * dx, y: y + 30 * dy });
  return { at, corners: [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)] };
}

const DEGREE = Math.PI / 180;

describe('rows that run aslant', () => {
  it.each([-25, -12, -4, 0, 7, 14, 30])('turned by %i degrees, that is told', (degrees) => {
    expect(turnOfRows(places(degrees * DEGREE)) / DEGREE).toBeCloseTo(degrees, 0);
  });

  it.each([-25, -12, -4, 0, 7, 14, 30])(
    'turned by %i degrees, they are read row by row',
    (degrees) => {
      const laid = places(degrees * DEGREE).map(squareAt);
      const shuffled = [...laid].sort((p, q) => ((p.at * 29) % 48) - ((q.at * 29) % 48));
      expect(byReading(shuffled).map(({ at }) => at)).toEqual(laid.map(({ at }) => at));
    },
  );

  it('a row that bends, as in a picture taken aslant, stays one row', () => {
    const laid = places(0).map(({ x, y }, at) => squareAt({ x, y: y + (x * x) / 6000 }, at));
    expect(byReading([...laid].reverse()).map(({ at }) => at)).toEqual(laid.map(({ at }) => at));
  });

  it('three things, or ways in all directions, tell no turn', () => {
    expect(turnOfRows(places(0.3).slice(0, 3))).toBe(0);
    const around = Array.from({ length: 9 }, (_, at) => ({
      x: 100 * at * Math.cos(at * 2.4),
      y: 100 * at * Math.sin(at * 2.4),
    }));
    expect(turnOfRows(around)).toBe(0);
  });
});
