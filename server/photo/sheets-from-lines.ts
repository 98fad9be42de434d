import { polygonArea } from '../geometry/polygon.ts';
import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { inReadingOrder, isConvex, sidesOf } from '../geometry/quad.ts';
import { crossing } from './crossing.ts';
import { supportOf } from './edges.ts';
import type { Edges } from './edges.ts';
import { borneAlong } from './straight-lines.ts';
import type { StraightLine } from './straight-lines.ts';

/** A quad put together from lines, with how well edges bear out its sides. */
export interface LineQuad {
  readonly corners: Quad<'photo'>;
  readonly area: number;
  /** Mean and least part of a side that is borne out. */
  readonly mean: number;
  readonly least: number;
  readonly score: number;
}

export interface SidePair {
  readonly width: number;
  readonly height: number;
}

/**
 * Puts quads of a known size together from straight lines: wherever two lines meet at about a right angle
 * and both are borne out for a side's length from there, the other two sides are looked for where
 * they have to be.
 *
 * Takes       lines and edges of the preview, the size of a sheet there as a function of place, how steep
 *             an edge has to be, and a judge that says for a quad how well it agrees with the table (0 to 1).
 * Gives       quads, best first; they may overlap.
 */
export function quadsFromLines(
  lines: readonly StraightLine[],
  edges: Edges,
  sizeAt: (place: PhotoPoint) => SidePair,
  least: number,
  judge: (corners: Quad<'photo'>) => number,
): LineQuad[] {
  const quads: LineQuad[] = [];
  for (let i = 0; i < lines.length; i++)
    for (let j = i + 1; j < lines.length; j++) {
      const meet = meeting(lines[i]!, lines[j]!, edges);
      if (meet === null) continue;
      const { width, height } = sizeAt(meet.point);
      const shapes =
        Math.abs(Math.log(width / height)) < 0.02
          ? [[width, height]]
          : [
              [width, height],
              [height, width],
            ];
      for (const [a, b] of shapes)
        for (const su of [a!, -a!])
          for (const sv of [b!, -b!]) {
            if (borneAlong(lines[i]!, meet.u, meet.u + su) < FIRST) continue;
            if (borneAlong(lines[j]!, meet.v, meet.v + sv) < FIRST) continue;
            const quad = completed(lines[i]!, lines[j]!, meet.point, su, sv, edges, least);
            if (quad === null) continue;
            const score = quad.score * judge(quad.corners);
            if (score > ENOUGH) quads.push({ ...quad, score });
          }
    }
  return quads.sort((p, q) => q.score - p.score);
}

/** Part of each of the two meeting sides that has to be borne out. */
const FIRST = 0.3;
const ENOUGH = 0.5;

function meeting(
  p: StraightLine,
  q: StraightLine,
  { width, height }: Edges,
): { point: PhotoPoint; u: number; v: number } | null {
  const across = p.dx * q.dy - p.dy * q.dx;
  if (Math.abs(across) < 0.94) return null;
  const [ex, ey] = [q.x - p.x, q.y - p.y];
  const u = (ex * q.dy - ey * q.dx) / across;
  const v = (ex * p.dy - ey * p.dx) / across;
  const point = { x: p.x + u * p.dx, y: p.y + u * p.dy };
  const inside = point.x > -8 && point.y > -8 && point.x < width + 8 && point.y < height + 8;
  return inside ? { point, u, v } : null;
}

function completed(
  p: StraightLine,
  q: StraightLine,
  from: PhotoPoint,
  su: number,
  sv: number,
  edges: Edges,
  least: number,
): LineQuad | null {
  const alongU = { x: from.x + su * p.dx, y: from.y + su * p.dy };
  const alongV = { x: from.x + sv * q.dx, y: from.y + sv * q.dy };
  const far = { x: alongU.x + sv * q.dx, y: alongU.y + sv * q.dy };
  const rough = [from, alongU, far, alongV];
  if (!rough.every((c) => c.x > -6 && c.y > -6 && c.x < edges.width + 6 && c.y < edges.height + 6))
    return null;
  const slack = SLACK * Math.max(Math.abs(su), Math.abs(sv));
  const third = bestSide(
    alongU,
    far,
    { x: Math.sign(su) * p.dx, y: Math.sign(su) * p.dy },
    slack,
    edges,
    least,
  );
  if (third.borne < 0.3) return null;
  const fourth = bestSide(
    alongV,
    far,
    { x: Math.sign(sv) * q.dx, y: Math.sign(sv) * q.dy },
    slack,
    edges,
    least,
  );
  if (fourth.borne < 0.3) return null;
  const a = crossing({ from, to: alongU }, third);
  const b = crossing(third, fourth);
  const c = crossing({ from, to: alongV }, fourth);
  if (a === null || b === null || c === null) return null;
  const corners = inReadingOrder<'photo'>([from, a, b, c]);
  if (!isConvex(corners) || !hasSides(corners, Math.abs(su), Math.abs(sv))) return null;
  const borne = corners.map((corner, side) =>
    supportOf(edges, corner, corners[(side + 1) % 4]!, 1, least),
  );
  const mean = borne.reduce((sum, side) => sum + side, 0) / 4;
  const weakest = Math.min(...borne);
  return {
    corners,
    area: polygonArea(corners),
    mean,
    least: weakest,
    score: 0.5 * mean + 0.5 * weakest,
  };
}

/** Whether the sides are as long as they should be, either way round, but for a little perspective. */
function hasSides(corners: Quad<'photo'>, a: number, b: number): boolean {
  const [upper, right, lower, left] = sidesOf(corners);
  const near = (length: number, wanted: number): boolean =>
    Math.abs(length / wanted - 1) < 1.3 * SLACK;
  return (
    (near(upper, a) && near(lower, a) && near(left, b) && near(right, b)) ||
    (near(upper, b) && near(lower, b) && near(left, a) && near(right, a))
  );
}

/** How far, as a part of a side, the far sides may be off their place by perspective. */
const SLACK = 0.045;

interface Side {
  readonly from: PhotoPoint;
  readonly to: PhotoPoint;
  readonly borne: number;
}

/** The side moved and turned a little until edges bear it out best; nearer wins between equals. */
function bestSide(
  from: PhotoPoint,
  to: PhotoPoint,
  out: PhotoPoint,
  slack: number,
  edges: Edges,
  least: number,
): Side {
  let best: Side = { from, to, borne: -1 };
  let most = -1;
  const step = Math.max(1, slack / 7);
  for (let start = -slack; start <= slack; start += step)
    for (let end = -slack; end <= slack; end += step) {
      if (Math.abs(end - start) > 0.8 * slack) continue;
      const movedFrom = { x: from.x + start * out.x, y: from.y + start * out.y };
      const movedTo = { x: to.x + end * out.x, y: to.y + end * out.y };
      const borne = supportOf(edges, movedFrom, movedTo, 0, least);
      const value = borne - (0.04 * (Math.abs(start) + Math.abs(end))) / slack;
      if (value > most) {
        most = value;
        best = { from: movedFrom, to: movedTo, borne };
      }
    }
  return best;
}
