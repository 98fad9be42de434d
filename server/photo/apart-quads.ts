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
  return !isMostlyOutside(p, q) || !isMostlyOutside(q, p);
}

const SLIVER = 0.04;
const GRID = 9;

function isMostlyOutside(p: Quad<'photo'>, q: Quad<'photo'>): boolean {
  if (!boxesMeet(p, q)) return true;
  let inside = 0;
  for (const place of gridOf(p, GRID))
    if (contains(q, place) && ++inside > SLIVER * GRID * GRID) return false;
  return true;
}

function boxesMeet(p: Quad<'photo'>, q: Quad<'photo'>): boolean {
  return axesMeet(p, q, 'x') && axesMeet(p, q, 'y');
}

function axesMeet([a, b, c, d]: Quad<'photo'>, [e, f, g, h]: Quad<'photo'>, k: 'x' | 'y'): boolean {
  return (
    Math.max(a[k], b[k], c[k], d[k]) >= Math.min(e[k], f[k], g[k], h[k]) &&
    Math.min(a[k], b[k], c[k], d[k]) <= Math.max(e[k], f[k], g[k], h[k])
  );
}

/** Places spread evenly over a quad. */
export function gridOf([a, b, c, d]: Quad<'photo'>, n: number): PhotoPoint[] {
  const places: PhotoPoint[] = [];
  for (let i = 0; i < n; i++) {
    const u = (i + 0.5) / n;
    for (let j = 0; j < n; j++) {
      const v = (j + 0.5) / n;
      const [atA, atB, atC, atD] = [(1 - u) * (1 - v), u * (1 - v), u * v, (1 - u) * v];
      places.push({
        x: atA * a.x + atB * b.x + atC * c.x + atD * d.x,
        y: atA * a.y + atB * b.y + atC * c.y + atD * d.y,
      });
    }
  }
  return places;
}
