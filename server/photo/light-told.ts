import { SHAPE, UNKNOWNS } from './light-surface.ts';
import type { LightSurface } from './light-surface.ts';
import { solveAll } from './surface.ts';

/** Which unknowns each channel is made of: green's shape, and its own. */
const MADE_OF = [
  [1, 1, 0],
  [1, 0, 0],
  [1, 0, 1],
] as const;

/** What one surface tells of the unknowns: its normal equations, were it quite flat and of one colour all over. */
function toldBy({
  count,
  terms,
  logs,
  weights,
  middle,
  precision,
  counts,
}: LightSurface): Float64Array[] {
  const squares = new Float64Array(SHAPE * SHAPE);
  const products = new Float64Array(SHAPE * 3);
  for (let i = 0; i < count; i++) {
    const w = weights[i]!;
    if (w === 0) continue;
    for (let t = 0; t < SHAPE; t++) {
      const here = w * (terms[SHAPE * i + t]! - middle[t]!);
      for (let u = t; u < SHAPE; u++)
        squares[SHAPE * t + u]! += here * (terms[SHAPE * i + u]! - middle[u]!);
      for (let k = 0; k < 3; k++)
        products[3 * t + k]! += here * (logs[3 * i + k]! - middle[SHAPE + k]!);
    }
  }
  for (let t = 1; t < SHAPE; t++)
    for (let u = 0; u < t; u++) squares[SHAPE * t + u] = squares[SHAPE * u + t]!;
  const told = Array.from({ length: UNKNOWNS }, () => new Float64Array(UNKNOWNS + 1));
  for (let part = 0; part < 3; part++) {
    // How much a change of this part's shape weighs in each channel.
    const pull = [0, 1, 2].map((k) =>
      [0, 1, 2].reduce((sum, p) => sum + MADE_OF[p]![part]! * precision[3 * p + k]!, 0),
    );
    for (let t = 0; t < SHAPE; t++) {
      const row = told[SHAPE * part + t]!;
      for (let other = 0; other < 3; other++) {
        const by = counts * [0, 1, 2].reduce((sum, k) => sum + pull[k]! * MADE_OF[k]![other]!, 0);
        for (let u = 0; u < SHAPE; u++) row[SHAPE * other + u]! += by * squares[SHAPE * t + u]!;
      }
      for (let k = 0; k < 3; k++) row[UNKNOWNS]! += counts * pull[k]! * products[3 * t + k]!;
    }
  }
  return told;
}

/**
 * No paper lies quite flat, no light is quite a surface of second order, and a watercolour's tone runs: a shape of
 * the surface's own is allowed for and counts against what it tells. One that turns out larger than that is allowed more.
 */
export function addTo(matrix: Float64Array[], seen: LightSurface, shape: Float64Array): void {
  const told = toldBy(seen);
  const own = ownShapes(seen);
  const open = own.map((row, t) => row.map((value, u) => value + told[t]![u]!));
  // What the surface says of its own shape when the light is as it was found so far.
  const left = told
    .slice(0, SHAPE)
    .map((row) => row[UNKNOWNS]! - shape.reduce((sum, value, u) => sum + row[u]! * value, 0));
  // Behind the unknowns stands what is left, and then each column of what is told.
  const solved = solveAll(
    open.map((row, t) => {
      const line = new Float64Array(SHAPE + 2 + UNKNOWNS);
      line.set(row);
      line[SHAPE] = left[t]!;
      line.set(told[t]!, SHAPE + 1);
      return line;
    }),
  );
  const bent = solved.map((row) => row[SHAPE]!);
  const size = own.reduce(
    (sum, row, t) => sum + bent[t]! * row.reduce((all, value, u) => all + value * bent[u]!, 0),
    0,
  );
  seen.slack = Math.max(1, seen.slack * Math.sqrt(size / SHAPE));
  for (let r = 0; r < UNKNOWNS; r++)
    for (let c = 0; c <= UNKNOWNS; c++) {
      let by = told[r]![c]!;
      for (let t = 0; t < SHAPE; t++) by -= told[r]![t]! * solved[t]![SHAPE + 1 + c]!;
      matrix[r]![c]! += by;
    }
}

/** The inverse covariance of a surface's own shape, which is small around its middle. */
function ownShapes({ middle, slack }: LightSurface): number[][] {
  const [x, y] = [middle[0]!, middle[1]!];
  // Terms of the picture's x and y by those of the places from the surface's middle.
  const local = [
    [1, 0, 2 * x, y, 0],
    [0, 1, 0, x, 2 * y],
    [0, 0, 1, 0, 0],
    [0, 0, 0, 1, 0],
    [0, 0, 0, 0, 1],
  ];
  const firm = [TILT, TILT, BEND, BEND, BEND].map((spread) => 1 / (spread * spread * slack));
  return Array.from({ length: SHAPE }, (_, t) =>
    Array.from({ length: SHAPE }, (_u, u) =>
      local.reduce((sum, row, m) => sum + row[t]! * firm[m]! * row[u]!, 0),
    ),
  );
}

/** Standard deviations of a surface's own tilt and bend, over half the picture: those of a sheet in the edge of a shadow. */
const TILT = 0.06;
const BEND = 0.1;
