import type { PhotoPoint } from '../geometry/points.ts';

/**
 * How far rows of things are turned in the picture, told by the ways from each to its nearest neighbours: in rows and
 * columns these lie a quarter turn apart, and across the corner half of that, which takes nothing from either side.
 *
 * Takes       the middles of the things.
 * Gives       an angle within an eighth of a turn, in radians, clockwise in the picture; 0 where they lie in no rows.
 * Source      means of directions: Mardia, Jupp (2000), Directional Statistics, 2.2, with the angles taken fourfold.
 */
export function turnOfRows(middles: readonly PhotoPoint[]): number {
  let [across, down, count] = [0, 0, 0];
  for (const from of middles) {
    const ways = middles
      .filter((to) => to !== from)
      .map(({ x, y }) => ({ x: x - from.x, y: y - from.y }))
      .sort((p, q) => Math.hypot(p.x, p.y) - Math.hypot(q.x, q.y))
      .slice(0, NEIGHBOURS);
    for (const { x, y } of ways) {
      const fourfold = 4 * Math.atan2(y, x);
      across += Math.cos(fourfold);
      down += Math.sin(fourfold);
      count += 1;
    }
  }
  if (count < LEAST || Math.hypot(across, down) < AGREE * count) return 0;
  return Math.atan2(down, across) / 4;
}

const NEIGHBOURS = 2;
/** Of so many ways at least, and agreeing at least so far (1: all alike), rows are told. */
const LEAST = 8;
const AGREE = 0.5;

export function turned({ x, y }: PhotoPoint, by: number): PhotoPoint {
  return { x: x * Math.cos(by) - y * Math.sin(by), y: x * Math.sin(by) + y * Math.cos(by) };
}
