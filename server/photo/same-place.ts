import { polygonArea } from '../geometry/polygon.ts';
import type { Quad } from '../geometry/points.ts';

/** How far the corners of two readings of one thing may lie apart, as a part of its side. */
const APART = 0.1;

/** The one of these that lies where `corners` do; null where none does. */
export function sameAs<T extends { readonly corners: Quad<'photo'> }>(
  corners: Quad<'photo'>,
  among: readonly T[],
): T | null {
  const reach = APART * Math.sqrt(polygonArea(corners));
  return (
    among.find((one) =>
      one.corners.every(
        ({ x, y }, at) => Math.hypot(x - corners[at]!.x, y - corners[at]!.y) < reach,
      ),
    ) ?? null
  );
}
