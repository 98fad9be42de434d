import { units } from '../../lengths/length.ts';
import type { Length, Size } from '../../lengths/length.ts';
import type { Shape } from '../layout.ts';

export type SquareCorner = 'upper left' | 'upper right' | 'lower right' | 'lower left';

/** Places inside a layer's box, from its upper left corner. */
export function corners(
  ...points: readonly (readonly [number, number])[]
): { x: Length; y: Length }[] {
  return points.map(([x, y]) => ({ x: units(x), y: units(y) }));
}

/** Half of a box, cut from corner to corner: the triangle whose square corner lies there. */
export function triangle({ width, height }: Size, square: SquareCorner): Shape {
  const all = [
    ['upper left', 0, 0],
    ['upper right', width, 0],
    ['lower right', width, height],
    ['lower left', 0, height],
  ] as const;
  const missing = (all.findIndex(([name]) => name === square) + 2) % 4;
  const kept = all.filter((_, index) => index !== missing);
  return { kind: 'corners', points: corners(...kept.map(([, x, y]) => [x, y] as const)) };
}
