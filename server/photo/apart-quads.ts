import { contains } from '../geometry/polygon.ts';
import type { PhotoPoint, Quad } from '../geometry/points.ts';

/** The best quads that do not lie on each other or on those already there. */
export function apartQuads<T extends { readonly corners: Quad<'photo'> }>(
  quads: readonly T[],
  there: readonly Quad<'photo'>[],
): T[] {
  const chosen: T[] = [];
  for (const quad of quads) {
    const others = [...there, ...chosen.map(({ corners }) => corners)];
    if (others.every((other) => !overlap(quad.corners, other))) chosen.push(quad);
  }
  return chosen;
}

/** Whether more than a sliver of one quad lies on the other. */
export function overlap(p: Quad<'photo'>, q: Quad<'photo'>): boolean {
  return partInside(p, q) > SLIVER || partInside(q, p) > SLIVER;
}

const SLIVER = 0.04;
const GRID = 9;

function partInside(p: Quad<'photo'>, q: Quad<'photo'>): number {
  let inside = 0;
  for (const place of gridOf(p, GRID)) if (contains(q, place)) inside++;
  return inside / (GRID * GRID);
}

/** Places spread evenly over a quad. */
export function gridOf([a, b, c, d]: Quad<'photo'>, n: number): PhotoPoint[] {
  const places: PhotoPoint[] = [];
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      const [u, v] = [(i + 0.5) / n, (j + 0.5) / n];
      const mix = (k: 'x' | 'y'): number =>
        (1 - u) * (1 - v) * a[k] + u * (1 - v) * b[k] + u * v * c[k] + (1 - u) * v * d[k];
      places.push({ x: mix('x'), y: mix('y') });
    }
  return places;
}
