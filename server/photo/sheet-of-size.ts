import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { middleOf } from './find-sheets.ts';
import { fromPlane, ontoPlane } from './table-plane.ts';
import type { TablePlane } from './table-plane.ts';

/** Sides of a sheet across and down, in units of its shorter side. */
export interface SheetSides {
  readonly across: number;
  readonly down: number;
}

/**
 * The outline in the picture of a sheet of the known size that lies at a place of the table.
 *
 * Takes       the table, a place of the picture that lies on the sheet's middle, its turn on the table in radians
 *             clockwise, and its sides.
 * Gives       its corners, clockwise, the upper left one of the unturned sheet first.
 */
export function sheetAt(
  plane: TablePlane,
  middle: PhotoPoint,
  turn: number,
  { across, down }: SheetSides,
): Quad<'photo'> {
  const { u, v } = ontoPlane(plane, middle);
  const [cos, sin] = [Math.cos(turn) / 2, Math.sin(turn) / 2];
  return CORNERS.map(([right, lower]) =>
    fromPlane(plane, {
      u: u + right * across * cos - lower * down * sin,
      v: v + right * across * sin + lower * down * cos,
    }),
  ) as unknown as Quad<'photo'>;
}

const CORNERS = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
] as const;

/** How a quad lies on the table: a place on its middle, and its turn in radians clockwise, the mean of its four sides. */
export function poseOf(
  plane: TablePlane,
  quad: Quad<'photo'>,
): { readonly middle: PhotoPoint; readonly turn: number } {
  const spots = quad.map((corner) => ontoPlane(plane, corner));
  let [sin, cos] = [0, 0];
  spots.forEach((from, side) => {
    const to = spots[(side + 1) % 4]!;
    const turn = Math.atan2(to.v - from.v, to.u - from.u) - (side * Math.PI) / 2;
    sin += Math.sin(turn);
    cos += Math.cos(turn);
  });
  const mean = (of: readonly number[]): number => of.reduce((sum, value) => sum + value, 0) / 4;
  const middle = fromPlane(plane, {
    u: mean(spots.map(({ u }) => u)),
    v: mean(spots.map(({ v }) => v)),
  });
  return {
    middle: Number.isFinite(middle.x + middle.y) ? middle : middleOf(quad),
    turn: Math.atan2(sin, cos),
  };
}
