import type { Quad } from '../geometry/points.ts';
import { contains } from '../geometry/polygon.ts';

/** The pixels of a picture whose middles lie in a quad, row by row. */
export function pixelsIn(corners: Quad<'photo'>, width: number, height: number): Int32Array {
  const pixels: number[] = [];
  const top = Math.max(0, Math.floor(Math.min(...corners.map((p) => p.y))));
  const bottom = Math.min(height - 1, Math.ceil(Math.max(...corners.map((p) => p.y))));
  const left = Math.max(0, Math.floor(Math.min(...corners.map((p) => p.x))));
  const right = Math.min(width - 1, Math.ceil(Math.max(...corners.map((p) => p.x))));
  for (let y = top; y <= bottom; y++)
    for (let x = left; x <= right; x++)
      if (contains(corners, { x: x + 0.5, y: y + 0.5 })) pixels.push(y * width + x);
  return Int32Array.from(pixels);
}
