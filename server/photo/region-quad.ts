import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { inReadingOrder } from '../geometry/quad.ts';
import { polygonArea } from '../geometry/polygon.ts';
import type { Region } from './regions.ts';

export interface RegionQuad {
  readonly corners: Quad<'photo'>;
  /** Area of the region over that of the quad: near 1 when the region is a whole sheet. */
  readonly fill: number;
}

/**
 * The four-cornered outline of a region, or null when it has none.
 *
 * The corners of its convex hull are taken away one by one, each time the one that costs the least area,
 * by prolonging the two sides beside a short side until they meet; what is left at four is the quad.
 */
export function quadOf(region: Region, width: number): RegionQuad | null {
  const hull = hullOf(region, width);
  if (hull.length < 4) return null;
  const corners = fourCorners(hull);
  if (corners === null) return null;
  return {
    corners: inReadingOrder(corners as unknown as Quad<'photo'>),
    fill: region.pixels.length / polygonArea(corners),
  };
}

/** Andrew's monotone chain over the outermost pixels of each row, down one side and up the other; corners at pixel borders. */
function hullOf({ pixels, top, bottom }: Region, width: number): PhotoPoint[] {
  const rows = bottom - top + 1;
  const first = new Int32Array(rows).fill(-1);
  const last = new Int32Array(rows);
  const perWidth = 1 / width;
  for (let at = pixels.length - 1; at >= 0; at--) {
    const pixel = pixels[at]!;
    const y = ((pixel + 0.5) * perWidth) | 0;
    const x = pixel - y * width;
    const row = y - top;
    if (first[row]! < 0 || x < first[row]!) first[row] = x;
    if (x > last[row]!) last[row] = x;
  }
  const left: PhotoPoint[] = [];
  const right: PhotoPoint[] = [];
  // A border between two rows reaches as far as the wider of them.
  for (let border = 0; border <= rows; border++) {
    const above = border > 0 && first[border - 1]! >= 0 ? border - 1 : border;
    const below = border < rows && first[border]! >= 0 ? border : above;
    if (above === rows || first[below]! < 0) continue;
    const y = top + border;
    left.push({ x: Math.min(first[above]!, first[below]!), y });
    right.push({ x: Math.max(last[above]!, last[below]!) + 1, y });
  }
  return [...chain(right), ...chain(left.reverse())];
}

function chain(points: readonly PhotoPoint[]): PhotoPoint[] {
  const out: PhotoPoint[] = [];
  for (const point of points) {
    while (out.length >= 2 && cross(out[out.length - 2]!, out[out.length - 1]!, point) <= 0)
      out.pop();
    out.push(point);
  }
  return out;
}

function cross(p: PhotoPoint, q: PhotoPoint, r: PhotoPoint): number {
  return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
}

function fourCorners(hull: readonly PhotoPoint[]): PhotoPoint[] | null {
  let corners = [...hull];
  while (corners.length > 4) {
    let best: { at: number; meet: PhotoPoint; cost: number } | null = null;
    for (let at = 0; at < corners.length; at++) {
      const [p, q, r, s] = [0, 1, 2, 3].map((k) => corners[(at + k) % corners.length]!);
      const meet = meeting(p!, q!, s!, r!);
      if (meet === null) continue;
      const cost = Math.abs(cross(q!, meet, r!));
      if (best === null || cost < best.cost) best = { at, meet, cost };
    }
    if (best === null) return null;
    const { at, meet } = best;
    const n = corners.length;
    const gone = [(at + 1) % n, (at + 2) % n];
    corners = corners.flatMap((corner, i) =>
      i === gone[0] ? [meet] : i === gone[1] ? [] : [corner],
    );
  }
  return corners;
}

/** Where the line from p through q, prolonged beyond q, meets the one from s through r, beyond r. */
function meeting(p: PhotoPoint, q: PhotoPoint, s: PhotoPoint, r: PhotoPoint): PhotoPoint | null {
  const [ux, uy] = [q.x - p.x, q.y - p.y];
  const [vx, vy] = [r.x - s.x, r.y - s.y];
  const across = ux * vy - uy * vx;
  if (Math.abs(across) < 1e-9) return null;
  const t = ((r.x - q.x) * vy - (r.y - q.y) * vx) / across;
  const k = ((r.x - q.x) * uy - (r.y - q.y) * ux) / across;
  return t >= 0 && k >= 0 ? { x: q.x + t * ux, y: q.y + t * uy } : null;
}
