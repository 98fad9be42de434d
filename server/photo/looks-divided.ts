import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { supportOf } from './edges.ts';
import type { Candidate, Overview } from './find-sheets.ts';
import { seenEdges } from './seen-edges.ts';

/** Two to six sheets side by side with the table between them look like one: table along a middle line. */
export function isGrownTogether(corners: Quad<'photo'>, { table, image }: Overview): boolean {
  const [a, b, c, d] = corners;
  for (const n of [2, 3]) {
    const lines = Array.from({ length: n - 1 }, (_, k) => (k + 1) / n);
    const down = lines.map((t) =>
      tableAlong(between(a, b, t), between(d, c, t), table.reached, image.width),
    );
    const across = lines.map((t) =>
      tableAlong(between(a, d, t), between(b, c, t), table.reached, image.width),
    );
    if (Math.min(...down) > 0.35 && Math.min(...across) > 0.35) return true;
  }
  return false;
}

function tableAlong(from: PhotoPoint, to: PhotoPoint, reached: Uint8Array, width: number): number {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const slack = Math.ceil(0.02 * length);
  const [nx, ny] = [(from.y - to.y) / length, (to.x - from.x) / length];
  const count = 40;
  let hits = 0;
  for (let i = 0; i < count; i++) {
    const t = 0.05 + (0.9 * (i + 0.5)) / count;
    for (let d = -slack; d <= slack; d++) {
      const x = Math.round(from.x + t * (to.x - from.x) + d * nx);
      const y = Math.round(from.y + t * (to.y - from.y) + d * ny);
      if (reached[y * width + x] === 1) {
        hits++;
        break;
      }
    }
  }
  return hits / count;
}

function between(p: PhotoPoint, q: PhotoPoint, t: number): PhotoPoint {
  return { x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) };
}

/**
 * Without those that are four or nine of the others grown together: as large as these, and with edges along the lines
 * that divide them. By area alone one block of four would speak louder than three single sheets.
 */
export function withoutBlocks(shaped: readonly Candidate[], overview: Overview): Candidate[] {
  const times = (candidate: Candidate): number =>
    [2, 3].find((n) =>
      shaped.some(({ area }) => {
        const by = candidate.area / (n * n * area);
        return by > 1 / GAPS && by < GAPS;
      }),
    ) ?? 1;
  const blocks = shaped.filter((candidate) => times(candidate) > 1);
  if (blocks.length === 0) return [...shaped];
  const edges = seenEdges(overview);
  const borne = ({ corners: [a, b, c, d] }: Candidate, n: number): number =>
    Math.min(
      ...Array.from({ length: n - 1 }, (_, k) => (k + 1) / n).flatMap((t) => [
        supportOf(edges, between(a, b, t), between(d, c, t), REACH),
        supportOf(edges, between(a, d, t), between(b, c, t), REACH),
      ]),
    );
  return shaped.filter(
    (candidate) => !blocks.includes(candidate) || borne(candidate, times(candidate)) < BORNE,
  );
}

/** The gaps between them make a block larger, the perspective larger or smaller. */
const GAPS = 1.3;
/** Pixels of the preview within which a dividing line is looked for. */
const REACH = 5;
/** Part of each dividing line along which an edge is seen. */
const BORNE = 0.7;
