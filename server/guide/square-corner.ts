import { shapeCorners } from '../layouts/outline.ts';
import type { Shape } from '../layouts/layout.ts';
import type { Size } from '../lengths/length.ts';

/** A corner of the rectangle round a piece. */
export interface RectangleCorner {
  readonly right: boolean;
  readonly lower: boolean;
}

/** The four, from the upper left, clockwise. */
const CORNERS: readonly RectangleCorner[] = [
  { right: false, lower: false },
  { right: true, lower: false },
  { right: true, lower: true },
  { right: false, lower: true },
];

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** The corner at which a slanted piece keeps both edges of its rectangle; null when it has none, or is not slanted. */
export function squareCorner(shape: Shape, size: Size): RectangleCorner | null {
  if (shape.kind !== 'corners') return null;
  const points = shapeCorners(shape, size);
  return (
    CORNERS.find((corner) => {
      const { x, y } = placeOf(corner, size);
      const at = points.findIndex((point) => point.x === x && point.y === y);
      if (at === -1) return false;
      const beside = [points.at(at - 1)!, points[(at + 1) % points.length]!];
      return beside.some((point) => point.x === x) && beside.some((point) => point.y === y);
    }) ?? null
  );
}

/** The corner of the rectangle that stays with the piece when it is cut along a slant, in words. */
export function keptCorner(shape: Shape, size: Size, from: Place, to: Place): string | null {
  const points = shapeCorners(shape, size);
  const middle = {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  };
  const kept = Math.sign(sideOf(from, to, middle));
  const corner = CORNERS.find((one) => Math.sign(sideOf(from, to, placeOf(one, size))) === kept);
  if (corner === undefined) return null;
  return `${corner.lower ? 'lower' : 'upper'} ${corner.right ? 'right' : 'left'}`;
}

/** Positive on one side of the line, negative on the other, 0 on it. */
function sideOf(from: Place, to: Place, at: Place): number {
  return (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x);
}

function placeOf({ right, lower }: RectangleCorner, { width, height }: Size): Place {
  return { x: right ? width : 0, y: lower ? height : 0 };
}
