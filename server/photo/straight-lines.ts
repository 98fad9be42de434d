import { workRoom } from '../colour/work-room.ts';
import type { Quad } from '../geometry/points.ts';
import type { Edges } from './edges.ts';
import { fillQuad } from './fill-quad.ts';

/** A straight line seen in the picture, in pieces. */
export interface StraightLine {
  /** A point of it and its direction (length 1). */
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  /** Where edges bear it out: from, to in pixels along the direction, ascending, apart. */
  readonly pieces: readonly (readonly [number, number])[];
  /** Sum of the pieces. */
  readonly borne: number;
}

interface Segment {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  readonly half: number;
}

/**
 * Finds straight lines: bands of edge pixels that agree in direction, joined where they continue each
 * other, so that the border of a striped sheet counts as one line.
 *
 * Takes       the edges, how many lines at most, and quads within which edges tell nothing.
 * Gives       lines, those borne out longest first.
 * Source      the growing of bands follows Grompone von Gioi and others (2010), LSD: a fast line segment
 *             detector, doi:10.1109/TPAMI.2008.300, without its count of false alarms.
 */
export function straightLines(
  edges: Edges,
  most: number,
  closed: readonly Quad<'photo'>[] = [],
): StraightLine[] {
  const segments = segmentsOf(edges, closed);
  segments.sort((p, q) => q.half - p.half);
  const left = segments.map((_, index) => index);
  const lines: StraightLine[] = [];
  while (left.length > 0) {
    const line = joined(segments, left);
    if (line.borne >= SHORTEST_LINE) lines.push(line);
  }
  return lines.sort((p, q) => q.borne - p.borne).slice(0, most);
}

const SHORTEST_SEGMENT = 7;
const SHORTEST_LINE = 24;
/** Cosine of twice 12 degrees. */
const AGREES = 0.91;

const LEVELS = 32;
const orderRoom = workRoom((length) => new Int32Array(length));
const bandRoom = workRoom((length) => new Int32Array(length));

function segmentsOf(edges: Edges, closed: readonly Quad<'photo'>[]): Segment[] {
  const { width, height, steep, ways } = edges;
  const seen = new Uint8Array(width * height);
  for (const corners of closed) fillQuad({ width, height, of: seen }, corners, 1);
  const order = byLevel(edges, seen);
  const band = bandRoom(width * height);
  const segments: Segment[] = [];
  for (const start of order) {
    if (seen[start] === 1) continue;
    band[0] = start;
    seen[start] = 1;
    let c = ways[2 * start]!;
    let s = ways[2 * start + 1]!;
    let size = 1;
    // The band grows while it is walked.
    for (let walked = 0; walked < size; walked++) {
      const pixel = band[walked]!;
      const agrees = AGREES * Math.sqrt(c * c + s * s);
      for (let row = pixel - width; row <= pixel + width; row += width)
        for (let near = row - 1; near <= row + 1; near++) {
          if (seen[near] !== 0) continue;
          const nearC = ways[2 * near]!;
          const nearS = ways[2 * near + 1]!;
          if (nearC * c + nearS * s < agrees) continue;
          seen[near] = 1;
          band[size++] = near;
          c += nearC;
          s += nearS;
        }
    }
    const segment = size >= SHORTEST_SEGMENT ? segmentOf(band, size, width, steep) : null;
    if (segment !== null) segments.push(segment);
  }
  return segments;
}

/** The pixels that count and are not seen yet, the steepest level first, row by row in each; all others are marked as seen. */
function byLevel({ width, height, least, steep, ways }: Edges, seen: Uint8Array): Int32Array {
  const counts = new Int32Array(LEVELS + 1);
  // Only crests count, or the two borders of a narrow gap would grow into one thick band.
  const [first, end] = [width + 1, steep.length - width - 1];
  seen.fill(1, 0, first).fill(1, end);
  for (let pixel = first; pixel < end; pixel++) {
    if (seen[pixel] === 1) continue;
    const value = steep[pixel]!;
    if (value === 0 || (value >= FAINT * least && !isCrest(pixel, width, steep, ways))) {
      seen[pixel] = 1;
      continue;
    }
    counts[LEVELS - levelOf(value)]!++;
  }
  for (let level = 1; level <= LEVELS; level++) counts[level]! += counts[level - 1]!;
  const order = orderRoom(width * height).subarray(0, counts[LEVELS]);
  for (let pixel = first; pixel < end; pixel++)
    if (seen[pixel] === 0) order[counts[LEVELS - 1 - levelOf(steep[pixel]!)]!++] = pixel;
  return order;
}

function levelOf(steepness: number): number {
  return steepness >= LEVELS ? LEVELS - 1 : steepness | 0;
}

/** Whether no pixel before or behind it, across the edge, is clearly steeper. */
function isCrest(pixel: number, width: number, steep: Float32Array, ways: Float32Array): boolean {
  const c = ways[2 * pixel]!;
  const s = ways[2 * pixel + 1]!;
  // Doubled angles: a cosine near 1 is a change along the row, near -1 down the column, the sine along the diagonals.
  const step = Math.abs(c) > Math.abs(s) ? (c > 0 ? 1 : width) : s > 0 ? width + 1 : width - 1;
  const least = CREST * Math.max(steep[pixel - step]!, steep[pixel + step]!);
  return steep[pixel]! >= least;
}

/** Times the least steepness; fainter edges are all noise and have no crest. */
const FAINT = 2.5;
/** An edge may lie between two pixels, and noise may make the one or the other a little steeper. */
const CREST = 0.92;

/** The line through a band of pixels, weighed by steepness; null when the band is no line. */
function segmentOf(
  band: Int32Array,
  size: number,
  width: number,
  steep: Float32Array,
): Segment | null {
  const perWidth = 1 / width;
  let weight = 0;
  let mx = 0;
  let my = 0;
  for (let at = 0; at < size; at++) {
    const pixel = band[at]!;
    const w = steep[pixel]!;
    const row = ((pixel + 0.5) * perWidth) | 0;
    weight += w;
    mx += w * (pixel - row * width + 0.5);
    my += w * (row + 0.5);
  }
  mx /= weight;
  my /= weight;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (let at = 0; at < size; at++) {
    const pixel = band[at]!;
    const w = steep[pixel]!;
    const row = ((pixel + 0.5) * perWidth) | 0;
    const x = pixel - row * width + 0.5 - mx;
    const y = row + 0.5 - my;
    xx += w * x * x;
    xy += w * x * y;
    yy += w * y * y;
  }
  const angle = 0.5 * Math.atan2(2 * xy, xx - yy);
  const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
  const across = (xx * dy * dy - 2 * xy * dx * dy + yy * dx * dx) / weight;
  const along = (xx * dx * dx + 2 * xy * dx * dy + yy * dy * dy) / weight;
  const half = Math.sqrt(3 * along);
  if (half < SHORTEST_SEGMENT / 2 || across > 2.2 || along < 9 * across) return null;
  return { x: mx, y: my, dx, dy, half };
}

/** The line through the first segment that is left and all that continue it; these are taken out of those left. */
function joined(segments: readonly Segment[], left: number[]): StraightLine {
  const seed = segments[left[0]!]!;
  const { x, y, dx, dy } = seed;
  // Sums for fitting the line anew in the seed's frame: v = m + k u.
  let n = 0;
  let su = 0;
  let sv = 0;
  let suu = 0;
  let suv = 0;
  let m = 0;
  let k = 0;
  const pieces: [number, number][] = [];
  const add = ({ x: px, y: py, dx: qx, dy: qy, half }: Segment): void => {
    const cos = qx * dx + qy * dy;
    const u = (px - x) * dx + (py - y) * dy;
    pieces.push([u - half * Math.abs(cos), u + half * Math.abs(cos)]);
    for (let end = -half; end <= half; end += 2 * half) {
      const ex = px + end * qx - x;
      const ey = py + end * qy - y;
      const eu = ex * dx + ey * dy;
      const ev = ey * dx - ex * dy;
      n += half;
      su += half * eu;
      sv += half * ev;
      suu += half * eu * eu;
      suv += half * eu * ev;
    }
    const spread = n * suu - su * su;
    k = (n * suv - su * sv) / spread;
    m = (sv - k * su) / n;
  };
  add(seed);
  let kept = 0;
  for (let at = 1; at < left.length; at++) {
    const other = segments[left[at]!]!;
    if (continues(other)) add(other);
    else left[kept++] = left[at]!;
  }
  left.length = kept;
  function continues(other: Segment): boolean {
    const u = (other.x - x) * dx + (other.y - y) * dy;
    const v = (other.y - y) * dx - (other.x - x) * dy;
    if (Math.abs(v - m - k * u) > 1.3) return false;
    const slope = Math.abs(other.dy * dx - other.dx * dy - k * (other.dx * dx + other.dy * dy));
    // Short segments tell their direction badly.
    return slope * Math.min(other.half, 40) <= 1.6 && slope <= 0.25;
  }
  const length = Math.hypot(1, k);
  const direction = { dx: (dx - k * dy) / length, dy: (dy + k * dx) / length };
  const merged = mergedPieces(pieces);
  return {
    x: x - m * dy,
    y: y + m * dx,
    ...direction,
    pieces: merged,
    borne: merged.reduce((sum, [from, to]) => sum + to - from, 0),
  };
}

function mergedPieces(pieces: readonly (readonly [number, number])[]): [number, number][] {
  const sorted = [...pieces].sort((p, q) => p[0] - q[0]);
  const out: [number, number][] = [];
  for (const [from, to] of sorted) {
    const last = out[out.length - 1];
    if (last !== undefined && from <= last[1] + 2) last[1] = Math.max(last[1], to);
    else out.push([from, to]);
  }
  return out;
}

/** The part of a stretch of the line that edges bear out, 0 to 1. */
export function borneAlong(line: StraightLine, from: number, to: number): number {
  const [low, high] = from < to ? [from, to] : [to, from];
  let sum = 0;
  for (const [start, end] of line.pieces)
    sum += Math.max(0, Math.min(high, end) - Math.max(low, start));
  return sum / (high - low);
}
