import type { Quad } from '../geometry/points.ts';
import type { Mask } from './regions.ts';

/** Writes a value into all pixels of a mask that lie in a convex quad, row by row. */
export function fillQuad({ width, height, of }: Mask, corners: Quad<'photo'>, value: number): void {
  const top = Math.max(0, Math.floor(Math.min(...corners.map(({ y }) => y))));
  const bottom = Math.min(height - 1, Math.ceil(Math.max(...corners.map(({ y }) => y))));
  for (let y = top; y <= bottom; y++) {
    const [from, to] = spanOf(corners, y + 0.5);
    if (to < from) continue;
    of.fill(
      value,
      y * width + Math.max(0, Math.ceil(from)),
      y * width + Math.min(width, Math.ceil(to)),
    );
  }
}

/** Where a row crosses a convex quad. */
function spanOf(corners: Quad<'photo'>, y: number): [number, number] {
  let [from, to] = [Infinity, -Infinity];
  corners.forEach((p, side) => {
    const q = corners[(side + 1) % 4]!;
    if (p.y > y === q.y > y) return;
    const x = p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x);
    from = Math.min(from, x);
    to = Math.max(to, x);
  });
  return [from, to];
}
