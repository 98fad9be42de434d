import type { Point, Quad } from './points.ts';

/** Whether every corner turns the same way, clockwise or not; false when three corners are in line. */
export function isConvex(quad: Quad<string>): boolean {
  const turns = quad.map((corner, index) =>
    Math.sign(turn(corner, quad[(index + 1) % 4]!, quad[(index + 2) % 4]!)),
  );
  return turns[0] !== 0 && turns.every((sign) => sign === turns[0]);
}

/** The same corners, clockwise as seen, starting with the one nearest the upper left. */
export function inReadingOrder<Space extends string>(quad: Quad<Space>): Quad<Space> {
  const middle = { x: mean(quad.map((p) => p.x)), y: mean(quad.map((p) => p.y)) };
  const around = [...quad].sort(
    (p, q) =>
      Math.atan2(p.y - middle.y, p.x - middle.x) - Math.atan2(q.y - middle.y, q.x - middle.x),
  );
  const sums = around.map((p) => p.x + p.y);
  const start = sums.indexOf(Math.min(...sums));
  return [0, 1, 2, 3].map((step) => around[(start + step) % 4]!) as unknown as Quad<Space>;
}

/** Lengths of the four sides: upper, right, lower, left. */
export function sidesOf(quad: Quad<string>): readonly [number, number, number, number] {
  return quad.map((p, index) => {
    const q = quad[(index + 1) % 4]!;
    return Math.hypot(q.x - p.x, q.y - p.y);
  }) as unknown as [number, number, number, number];
}

/** An upright rectangle as a quad. */
export function rectangleQuad<Space extends string>(
  x: number,
  y: number,
  width: number,
  height: number,
): Quad<Space> {
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function turn(p: Point<string>, q: Point<string>, r: Point<string>): number {
  return (q.x - p.x) * (r.y - q.y) - (q.y - p.y) * (r.x - q.x);
}
