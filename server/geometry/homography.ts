import { expected } from '../refusals/refusal.ts';
import type { Point, Quad } from './points.ts';
import { polygonArea } from './polygon.ts';

/** A plane seen from elsewhere: nine numbers, row by row, the map of points of one space to another. */
export interface Homography<From extends string, To extends string> {
  readonly rows: readonly [number, number, number, number, number, number, number, number, number];
  /** Never set: only the type differs. */
  readonly spaces?: readonly [From, To];
}

type Rows = Homography<string, string>['rows'];

/**
 * The homography that takes four corners to four others.
 *
 * Takes     two quads, no three corners of either on one line (refused otherwise).
 * Gives     a map exact on the four corners to about 1e-9 of their distances.
 * Source    Hartley, Zisserman (2004), Multiple View Geometry, 2nd ed., section 4.1 (direct linear
 *           transformation) and 4.4.4 (normalisation); with four corners the last row's end is set
 *           to 1 after centring, which is safe because a convex quad's centre maps to finite points.
 * Checked   there and back, turned and scaled (property tests).
 */
export function homographyOf<From extends string, To extends string>(
  from: Quad<From>,
  to: Quad<To>,
): Homography<From, To> {
  const [normalFrom, a] = normalised(from);
  const [normalTo, b] = normalised(to);
  const [h0, h1, h2, h3, h4, h5, h6, h7] = solve(equations(normalFrom, normalTo));
  const core: Rows = [h0!, h1!, h2!, h3!, h4!, h5!, h6!, h7!, 1];
  return { rows: scaled(product(product(inverted(b), core), a)) };
}

/** Where a point goes. */
export function applyHomography<From extends string, To extends string>(
  map: Homography<From, To>,
  point: Point<From>,
): Point<To> {
  const [a, b, c, d, e, f, g, h, i] = map.rows;
  const { x, y } = point;
  const w = g * x + h * y + i;
  return { x: (a * x + b * y + c) / w, y: (d * x + e * y + f) / w };
}

/** The map back. */
export function inverseHomography<From extends string, To extends string>(
  map: Homography<From, To>,
): Homography<To, From> {
  return { rows: scaled(inverted(map.rows)) };
}

/** Moves the centre to 0 and the mean distance from it to the square root of 2. */
function normalised(quad: Quad<string>): [Point<string>[], Rows] {
  const x = (quad[0].x + quad[1].x + quad[2].x + quad[3].x) / 4;
  const y = (quad[0].y + quad[1].y + quad[2].y + quad[3].y) / 4;
  const mean = quad.reduce((sum, p) => sum + Math.hypot(p.x - x, p.y - y), 0) / 4;
  const s = Math.SQRT2 / (mean || 1);
  const points = quad.map((p) => ({ x: (p.x - x) * s, y: (p.y - y) * s }));
  if (!points.every((_, left) => cornersOff(points, left))) throw flat(quad);
  return [points, [s, 0, -s * x, 0, s, -s * y, 0, 0, 1]];
}

/** Whether the three corners other than this one span a triangle. */
function cornersOff(points: readonly Point<string>[], left: number): boolean {
  return polygonArea(points.filter((_, index) => index !== left)) > 1e-9;
}

function equations(from: readonly Point<string>[], to: readonly Point<string>[]): number[][] {
  return from.flatMap(({ x, y }, index) => {
    const { x: u, y: v } = to[index]!;
    return [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, v],
    ];
  });
}

/** Gaussian elimination with the largest pivot; each row ends with its right side. */
function solve(rows: number[][]): number[] {
  const size = rows.length;
  for (let column = 0; column < size; column++) {
    let best = column;
    for (let row = column + 1; row < size; row++)
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[best]![column]!)) best = row;
    [rows[column], rows[best]] = [rows[best]!, rows[column]!];
    const pivot = rows[column]!;
    for (const row of rows) {
      if (row === pivot) continue;
      const factor = row[column]! / pivot[column]!;
      for (let at = column; at <= size; at++) row[at]! -= factor * pivot[at]!;
    }
  }
  return rows.map((row, index) => row[size]! / row[index]!);
}

function product(m: Rows, n: Rows): Rows {
  const cell = (row: number, column: number): number =>
    m[row * 3]! * n[column]! + m[row * 3 + 1]! * n[3 + column]! + m[row * 3 + 2]! * n[6 + column]!;
  return [
    cell(0, 0),
    cell(0, 1),
    cell(0, 2),
    cell(1, 0),
    cell(1, 1),
    cell(1, 2),
    cell(2, 0),
    cell(2, 1),
    cell(2, 2),
  ];
}

/** The adjugate: the inverse up to a factor, which a homography does not feel. */
function inverted([a, b, c, d, e, f, g, h, i]: Rows): Rows {
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ];
}

function scaled(rows: Rows): Rows {
  const largest = Math.max(...rows.map(Math.abs));
  const by = Math.abs(rows[8]) > 1e-12 * largest ? rows[8] : largest;
  return rows.map((cell) => cell / by) as unknown as Rows;
}

function flat(corners: Quad<string>): Error {
  return expected(
    'four corners, no three of them on one line',
    'corners',
    corners,
    'Drag the four corners onto the corners of the sheet.',
  );
}
