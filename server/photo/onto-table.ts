import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { inReadingOrder } from '../geometry/quad.ts';
import type { LabImage } from '../colour/lab.ts';
import { quadOfLines } from './pick-sides.ts';

/**
 * Moves the sides of a rough quad to where the table begins, by the middle of many places along each side:
 * motifs of a cloth that hang on to the sheet's region do not count then.
 */
export function ontoTable(
  quad: Quad<'photo'>,
  reached: Uint8Array,
  { width, height }: LabImage,
): Quad<'photo'> {
  const ordered = inReadingOrder(quad);
  const lines = ordered.map((from, side) => {
    const to = ordered[(side + 1) % 4]!;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    const normal = { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
    const slack = Math.max(4, 0.05 * length);
    const places: { t: number; out: number }[] = [];
    for (let i = 0; i < 60; i++) {
      const t = 0.04 + (0.92 * (i + 0.5)) / 60;
      const out = tableBegins(
        from.x + t * (to.x - from.x),
        from.y + t * (to.y - from.y),
        normal,
        slack,
        reached,
        width,
        height,
      );
      if (out !== null) places.push({ t, out });
    }
    if (places.length < 20) return { from, to, borne: 0 };
    const { a, b } = steadyLine(places);
    const moved = (point: PhotoPoint, by: number): PhotoPoint => ({
      x: point.x + by * normal.x,
      y: point.y + by * normal.y,
    });
    return { from: moved(from, a), to: moved(to, a + b), borne: 1 };
  });
  return quadOfLines(lines) ?? ordered;
}

/** Walks outward until two pixels of table follow each other; null when the walk starts on table. */
function tableBegins(
  x: number,
  y: number,
  normal: PhotoPoint,
  slack: number,
  reached: Uint8Array,
  width: number,
  height: number,
): number | null {
  let run = 0;
  for (let d = -slack; d <= slack; d += 0.5) {
    const px = Math.floor(x + d * normal.x);
    const py = Math.floor(y + d * normal.y);
    if (px < 0 || py < 0 || px >= width || py >= height) return null;
    if (reached[py * width + px] === 0) run = 0;
    else if (++run === 3) return d - 1 <= -slack + 0.5 ? null : d - 1;
  }
  return null;
}

/** A line through places along a side by least absolute distances (reweighted). */
function steadyLine(places: readonly { t: number; out: number }[]): { a: number; b: number } {
  const sorted = places.map(({ out }) => out).sort((p, q) => p - q);
  let [a, b] = [sorted[sorted.length >> 1]!, 0];
  for (let round = 0; round < 12; round++) {
    let [n, st, stt, so, sto] = [0, 0, 0, 0, 0];
    for (const { t, out } of places) {
      const weight = 1 / Math.max(0.4, Math.abs(out - a - b * t));
      n += weight;
      st += weight * t;
      stt += weight * t * t;
      so += weight * out;
      sto += weight * t * out;
    }
    const spread = n * stt - st * st;
    if (spread < 1e-9) break;
    b = (n * sto - st * so) / spread;
    a = (so - b * st) / n;
  }
  return { a, b };
}
