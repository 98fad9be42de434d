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

/** What is known of a place before lines are put together there. */
export interface Judge {
  /** The size of a sheet, as a function of place. */
  readonly sizeAt: (place: PhotoPoint) => SidePair;
  /** Whether a sheet that is known has its middle part here. */
  readonly isTaken: (place: PhotoPoint) => boolean;
  /** The part of a quad that shows bare table, and how well the quad agrees with the table; both from 0 to 1. */
  readonly bareIn: (corners: Quad<'photo'>) => number;
  readonly agrees: (corners: Quad<'photo'>) => number;
}

/**
 * Puts quads of a known size together from straight lines: wherever two lines meet at about a right angle
 * and both are borne out for a side's length from there, the other two sides are looked for where
 * they have to be.
 *
 * Takes       lines and edges of the preview, and what is known of the places.
 * Gives       quads, best first; they may overlap, but none lies on a sheet that is known.
 */
export function quadsFromLines(
  lines: readonly StraightLine[],
  edges: Edges,
  judge: Judge,
): LineQuad[] {
  const quads: LineQuad[] = [];
  for (let i = 0; i < lines.length; i++)
    for (let j = i + 1; j < lines.length; j++) {
      const [p, q] = [lines[i]!, lines[j]!];
      const meet = meeting(p, q, edges);
      if (meet === null) continue;
      const { width, height } = judge.sizeAt(meet.point);
      const isSquare = Math.abs(Math.log(width / height)) < 0.02;
      for (let turned = 0; turned < (isSquare ? 1 : 2); turned++) {
        const [a, b] = turned === 0 ? [width, height] : [height, width];
        for (const su of [a, -a]) {
          if (borneAlong(p, meet.u, meet.u + su) < FIRST) continue;
          for (const sv of [b, -b]) {
            if (borneAlong(q, meet.v, meet.v + sv) < FIRST) continue;
            const quad = completed(p, q, meet.point, su, sv, edges, judge);
            if (quad !== null && quad.score > ENOUGH) quads.push(quad);
          }
        }
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
  const ex = q.x - p.x;
  const ey = q.y - p.y;
  const u = (ex * q.dy - ey * q.dx) / across;
  const v = (ex * p.dy - ey * p.dx) / across;
  const x = p.x + u * p.dx;
  const y = p.y + u * p.dy;
  const inside = x > -8 && y > -8 && x < width + 8 && y < height + 8;
  return inside ? { point: { x, y }, u, v } : null;
}

function completed(
  p: StraightLine,
  q: StraightLine,
  from: PhotoPoint,
  su: number,
  sv: number,
  edges: Edges,
  judge: Judge,
): LineQuad | null {
  const alongU = { x: from.x + su * p.dx, y: from.y + su * p.dy };
  const alongV = { x: from.x + sv * q.dx, y: from.y + sv * q.dy };
  const far = { x: alongU.x + sv * q.dx, y: alongU.y + sv * q.dy };
  const rough = [from, alongU, far, alongV] as const;
  if (!rough.every((c) => c.x > -6 && c.y > -6 && c.x < edges.width + 6 && c.y < edges.height + 6))
    return null;
  if (judge.isTaken({ x: (from.x + far.x) / 2, y: (from.y + far.y) / 2 })) return null;
  if (!isWorthCompleting(rough, edges, judge)) return null;
  const slack = SLACK * Math.max(Math.abs(su), Math.abs(sv));
  const third = bestSide(
    alongU,
    far,
    { x: Math.sign(su) * p.dx, y: Math.sign(su) * p.dy },
    slack,
    edges,
  );
  if (third === null) return null;
  const fourth = bestSide(
    alongV,
    far,
    { x: Math.sign(sv) * q.dx, y: Math.sign(sv) * q.dy },
    slack,
    edges,
  );
  if (fourth === null) return null;
  const a = crossing({ from, to: alongU }, third);
  const b = crossing(third, fourth);
  const c = crossing({ from, to: alongV }, fourth);
  if (a === null || b === null || c === null) return null;
  const corners = inReadingOrder<'photo'>([from, a, b, c]);
  if (!isConvex(corners) || !hasSides(corners, Math.abs(su), Math.abs(sv))) return null;
  const borne = corners.map((corner, side) =>
    supportOf(edges, corner, corners[(side + 1) % 4]!, 1),
  );
  const mean = borne.reduce((sum, side) => sum + side, 0) / 4;
  const weakest = Math.min(...borne);
  return {
    corners,
    area: polygonArea(corners),
    mean,
    least: weakest,
    score: (0.5 * mean + 0.5 * weakest) * judge.agrees(corners),
  };
}

/**
 * Whether a quad could still score enough once its far sides are laid onto edges that bear them out whole. To look for
 * these takes hundreds of times as long.
 */
function isWorthCompleting(
  [from, alongU, far, alongV]: readonly [PhotoPoint, PhotoPoint, PhotoPoint, PhotoPoint],
  edges: Edges,
  judge: Judge,
): boolean {
  const first = supportOf(edges, from, alongU, 1, LEAST_BORNE - MARGIN);
  if (first < 0) return false;
  const second = supportOf(edges, from, alongV, 1, LEAST_BORNE - MARGIN);
  if (second < 0) return false;
  const most = 0.5 * ((first + second + 2) / 4) + 0.5 * Math.min(first, second) + MARGIN;
  if (most <= ENOUGH) return false;
  const bare = judge.bareIn([from, alongU, far, alongV]);
  return Math.min(1, most) * (1 - BARE * Math.max(0, bare - MARGIN)) > ENOUGH;
}

/** By how much what is borne out, or bare, may change when the far corners move by the slack. */
const MARGIN = 0.1;
/** Part of a side that has to be borne out. */
export const LEAST_BORNE = 0.3;
/** How much it counts against a quad that it shows bare table. */
export const BARE = 0.5;

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
}

/**
 * The side moved and turned a little until edges bear it out best; nearer wins between equals. Null when that best one
 * is not borne out enough.
 */
function bestSide(
  from: PhotoPoint,
  to: PhotoPoint,
  out: PhotoPoint,
  slack: number,
  edges: Edges,
): Side | null {
  const step = Math.max(1, slack / 7);
  const movedFrom = { x: 0, y: 0 };
  const movedTo = { x: 0, y: 0 };
  let [most, borneThere, startThere, endThere] = [LEAST_BORNE - FURTHER, 0, 0, 0];
  let isFound = false;
  for (let start = -slack; start <= slack; start += step)
    for (let end = -slack; end <= slack; end += step) {
      if (Math.abs(end - start) > 0.8 * slack) continue;
      movedFrom.x = from.x + start * out.x;
      movedFrom.y = from.y + start * out.y;
      movedTo.x = to.x + end * out.x;
      movedTo.y = to.y + end * out.y;
      const further = (0.5 * FURTHER * (Math.abs(start) + Math.abs(end))) / slack;
      const borne = supportOf(edges, movedFrom, movedTo, 0, Math.max(0, most + further));
      if (borne - further <= most) continue;
      [most, borneThere, startThere, endThere] = [borne - further, borne, start, end];
      isFound = true;
    }
  if (!isFound || borneThere < LEAST_BORNE) return null;
  return {
    from: { x: from.x + startThere * out.x, y: from.y + startThere * out.y },
    to: { x: to.x + endThere * out.x, y: to.y + endThere * out.y },
  };
}

/** What is taken off the part that is borne out for a side moved as far as it may be. */
const FURTHER = 0.08;
