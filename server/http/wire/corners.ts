import type { Corners, Spot } from '../../contract/values.ts';
import type { Quad } from '../../geometry/points.ts';
import type * as Photo from '../../photo/picture.ts';

export function cornersOnWire([p, q, r, s]: Quad<'photo'>): Corners {
  const pair = ({ x, y }: { x: number; y: number }): [number, number] => [tenth(x), tenth(y)];
  return [pair(p), pair(q), pair(r), pair(s)];
}

export function cornersFromWire([p, q, r, s]: Corners): Quad<'photo'> {
  const point = ([x, y]: readonly [number, number]): { x: number; y: number } => ({ x, y });
  return [point(p), point(q), point(r), point(s)];
}

export function spotFromWire(spot: Spot): Photo.Spot {
  return spot.length === 2 ? { x: spot[0], y: spot[1] } : cornersFromWire(spot);
}

function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}
