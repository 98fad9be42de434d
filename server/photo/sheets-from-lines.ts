import { contains, polygonArea } from '../geometry/polygon.ts';
import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { inReadingOrder, isConvex, sidesOf } from '../geometry/quad.ts';
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
  const a = cross(from, alongU, third.from, third.to);
  const b = cross(third.from, third.to, fourth.from, fourth.to);
  const c = cross(from, alongV, fourth.from, fourth.to);
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

function cross(a: PhotoPoint, b: PhotoPoint, c: PhotoPoint, d: PhotoPoint): PhotoPoint | null {
  const [ux, uy] = [b.x - a.x, b.y - a.y];
  const [vx, vy] = [d.x - c.x, d.y - c.y];
  const across = ux * vy - uy * vx;
  if (Math.abs(across) < 1e-6) return null;
  const t = ((c.x - a.x) * vy - (c.y - a.y) * vx) / across;
  return { x: a.x + t * ux, y: a.y + t * uy };
}

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
