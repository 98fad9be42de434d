import type { PhotoPoint } from '../geometry/points.ts';

interface ThroughPoints {
  readonly from: PhotoPoint;
  readonly to: PhotoPoint;
}

/** Where two lines, each told by two points of it, cross; null when they are next to parallel. */
export function crossing(first: ThroughPoints, second: ThroughPoints): PhotoPoint | null {
  const [ux, uy] = [first.to.x - first.from.x, first.to.y - first.from.y];
  const [vx, vy] = [second.to.x - second.from.x, second.to.y - second.from.y];
  const across = ux * vy - uy * vx;
  if (Math.abs(across) < 1e-6) return null;
  const t = ((second.from.x - first.from.x) * vy - (second.from.y - first.from.y) * vx) / across;
  return { x: first.from.x + t * ux, y: first.from.y + t * uy };
}
