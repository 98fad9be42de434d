import type { Point } from './points.ts';

/**
 * Area with its sign, by the shoelace formula: above 0 when the corners go clockwise as seen (y down).
 */
export function signedArea(corners: readonly Point<string>[]): number {
  let twice = 0;
  for (let index = 0; index < corners.length; index++) {
    const p = corners[index]!;
    const q = corners[(index + 1) % corners.length]!;
    twice += p.x * q.y - q.x * p.y;
  }
  return twice / 2;
}

/** Area without sign. */
export function polygonArea(corners: readonly Point<string>[]): number {
  return Math.abs(signedArea(corners));
}

/** The point on which a cut-out of the polygon would balance; of a flat polygon, the mean corner. */
export function centroid<Space extends string>(corners: readonly Point<Space>[]): Point<Space> {
  const origin = corners[0]!;
  let [x, y, twice] = [0, 0, 0];
  for (let index = 0; index < corners.length; index++) {
    const p = from(origin, corners[index]!);
    const q = from(origin, corners[(index + 1) % corners.length]!);
    const cross = p.x * q.y - q.x * p.y;
    x += (p.x + q.x) * cross;
    y += (p.y + q.y) * cross;
    twice += cross;
  }
  if (twice === 0) return meanOf(corners);
  return { x: origin.x + x / (3 * twice), y: origin.y + y / (3 * twice) };
}

/** Whether the point lies inside, by counting crossings of a ray; points on the edge may fall either way. */
export function contains<Space extends string>(
  corners: readonly Point<Space>[],
  point: Point<Space>,
): boolean {
  let inside = false;
  for (let index = 0; index < corners.length; index++) {
    const p = corners[index]!;
    const q = corners[(index + 1) % corners.length]!;
    if (p.y > point.y === q.y > point.y) continue;
    const at = p.x + ((point.y - p.y) / (q.y - p.y)) * (q.x - p.x);
    if (point.x < at) inside = !inside;
  }
  return inside;
}

function from(origin: Point<string>, point: Point<string>): { x: number; y: number } {
  return { x: point.x - origin.x, y: point.y - origin.y };
}

function meanOf<Space extends string>(corners: readonly Point<Space>[]): Point<Space> {
  const sum = corners.reduce((total, p) => ({ x: total.x + p.x, y: total.y + p.y }), {
    x: 0,
    y: 0,
  });
  return { x: sum.x / corners.length, y: sum.y / corners.length };
}
