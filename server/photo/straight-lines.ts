import type { Edges } from './edges.ts';

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
 * Takes       the edges, and from which steepness on a pixel counts.
 * Source      the growing of bands follows Grompone von Gioi and others (2010), LSD: a fast line segment
 *             detector, doi:10.1109/TPAMI.2008.300, without its count of false alarms.
 */
export function straightLines(edges: Edges, least: number, most: number): StraightLine[] {
  const segments = segmentsOf(edges, least);
  segments.sort((p, q) => q.half - p.half);
  const used = new Uint8Array(segments.length);
  const lines: StraightLine[] = [];
  for (let seed = 0; seed < segments.length; seed++) {
    if (used[seed] === 1) continue;
    const line = joined(segments, seed, used);
    if (line.borne >= SHORTEST_LINE) lines.push(line);
  }
  return lines.sort((p, q) => q.borne - p.borne).slice(0, most);
}

const SHORTEST_SEGMENT = 7;
const SHORTEST_LINE = 24;
/** Cosine of twice 12 degrees. */
const AGREES = 0.91;

function segmentsOf({ width, height, steep, cos2, sin2 }: Edges, least: number): Segment[] {
  // Only crests count, or the two borders of a narrow gap would grow into one thick band.
  const seen = new Uint8Array(width * height).fill(1);
  const order: number[][] = Array.from({ length: 32 }, () => []);
  for (let pixel = width + 1; pixel < steep.length - width - 1; pixel++)
    if (
      steep[pixel]! > least &&
      (steep[pixel]! < FAINT * least || isCrest(pixel, width, steep, cos2, sin2))
    ) {
      seen[pixel] = 0;
      order[Math.min(31, Math.floor(steep[pixel]!))]!.push(pixel);
    }
  const segments: Segment[] = [];
  const band: number[] = [];
  for (let level = 31; level >= 0; level--)
    for (const start of order[level]!) {
      if (seen[start] === 1) continue;
      band.length = 0;
      band.push(start);
      seen[start] = 1;
      let [c, s] = [cos2[start]!, sin2[start]!];
      // The band grows while it is walked.
      for (const pixel of band) {
        const norm = Math.hypot(c, s);
        for (const dy of [-width, 0, width])
          for (let dx = -1; dx <= 1; dx++) {
            const near = pixel + dy + dx;
            if (near < 0 || near >= seen.length || seen[near] === 1 || steep[near]! <= least)
              continue;
            if ((cos2[near]! * c + sin2[near]! * s) / norm < AGREES) continue;
            seen[near] = 1;
            band.push(near);
            c += cos2[near]!;
            s += sin2[near]!;
          }
      }
      const segment = band.length >= SHORTEST_SEGMENT ? segmentOf(band, width, steep) : null;
      if (segment !== null) segments.push(segment);
    }
  return segments;
}

/** Whether no pixel before or behind it, across the edge, is clearly steeper. */
function isCrest(
  pixel: number,
  width: number,
  steep: Float32Array,
  cos2: Float32Array,
  sin2: Float32Array,
): boolean {
  const [c, s] = [cos2[pixel]!, sin2[pixel]!];
  // Doubled angles: cos2 near 1 is a change along the row, near -1 down the column, sin2 along the diagonals.
  const step = Math.abs(c) > Math.abs(s) ? (c > 0 ? 1 : width) : s > 0 ? width + 1 : width - 1;
  const least = CREST * Math.max(steep[pixel - step]!, steep[pixel + step]!);
  return steep[pixel]! >= least;
}

/** Times the least steepness; fainter edges are all noise and have no crest. */
const FAINT = 2.5;
/** An edge may lie between two pixels, and noise may make the one or the other a little steeper. */
const CREST = 0.92;

/** The line through a band of pixels, weighed by steepness; null when the band is no line. */
function segmentOf(band: readonly number[], width: number, steep: Float32Array): Segment | null {
  let weight = 0;
  let mx = 0;
  let my = 0;
  for (const pixel of band) {
    const w = steep[pixel]!;
    weight += w;
    mx += w * ((pixel % width) + 0.5);
    my += w * (Math.floor(pixel / width) + 0.5);
  }
  mx /= weight;
  my /= weight;
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const pixel of band) {
    const w = steep[pixel]!;
    const x = (pixel % width) + 0.5 - mx;
    const y = Math.floor(pixel / width) + 0.5 - my;
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

function joined(segments: readonly Segment[], seed: number, used: Uint8Array): StraightLine {
  const { x, y, dx, dy } = segments[seed]!;
  // Sums for fitting the line anew in the seed's frame: v = m + k u.
  let [n, su, sv, suu, suv] = [0, 0, 0, 0, 0];
  let [m, k] = [0, 0];
  const pieces: [number, number][] = [];
  const add = (index: number): void => {
    const { x: px, y: py, dx: qx, dy: qy, half } = segments[index]!;
    used[index] = 1;
    const cos = qx * dx + qy * dy;
    const u = (px - x) * dx + (py - y) * dy;
    pieces.push([u - half * Math.abs(cos), u + half * Math.abs(cos)]);
    for (const end of [-half, half]) {
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
  for (let index = seed + 1; index < segments.length; index++) {
    if (used[index] === 1) continue;
    const other = segments[index]!;
    const u = (other.x - x) * dx + (other.y - y) * dy;
    const v = (other.y - y) * dx - (other.x - x) * dy;
    if (Math.abs(v - m - k * u) > 1.3) continue;
    const slope = Math.abs(other.dy * dx - other.dx * dy - k * (other.dx * dx + other.dy * dy));
    // Short segments tell their direction badly.
    if (slope * Math.min(other.half, 40) > 1.6 || slope > 0.25) continue;
    add(index);
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
