import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { polygonArea } from '../geometry/polygon.ts';
import { inReadingOrder, isConvex } from '../geometry/quad.ts';
import type { LabImage } from '../colour/lab.ts';
import type { OpenedPixels, PhotoAsk } from './picture.ts';
import { crossing, edgesBeside, guessesOf } from './side-lines.ts';
import type { Line, SideGuess } from './side-lines.ts';
import { offSize, tableMetric } from './table-metric.ts';
import type { TableMetric } from './table-metric.ts';
import type { Table } from './table.ts';
import { scaledQuad } from './find-sheets.ts';
import { tableOutside } from './table-outside.ts';
import type { Candidate } from './find-sheets.ts';

/** What a quad settled to, in pixels of the large picture. */
export interface Settled {
  readonly corners: Quad<'photo'>;
  /** For each side, the part of it along which an edge was seen, from 0 to 1. */
  readonly borne: readonly number[];
  /** For each side, the part of it with table just outside. */
  readonly outside: readonly number[];
  /** How far its sides are off a sheet's size, at most. */
  readonly offSize: number;
  /** How much better its four edges fit than the next four: near 0 they are a guess. */
  readonly lead: number;
}

/**
 * Lays the rough quads of the preview onto the edges of the sheets in the large picture.
 *
 * Near each side there may be several edges: the border, its shadow, the neighbour across a 2 mm gap. For each
 * side a few are kept; the inner one that has table outside it comes first. Then all sheets together tell
 * how large a sheet is at each place, and each sheet takes those edges that give it this size.
 */
export function settleSheets(
  photo: OpenedPixels,
  rough: readonly Rough[],
  table: Table,
  image: LabImage,
  size: PhotoAsk['sheetMillimetres'],
): Settled[] {
  const perPreview = photo.scale / (photo.fullScale ?? 1);
  const aspect = size === null ? 1 : Math.max(size.width / size.height, size.height / size.width);
  const sheets = rough.map(({ corners, byMotifs, loose }) => {
    const onTable = byMotifs === true ? corners : ontoTable(corners, table.reached, image);
    const near = scaledQuad(onTable, perPreview);
    return near.map((from, side) =>
      guessSide(photo, near, side, from, table, perPreview, loose === true ? LOOSE_REACH : REACH),
    );
  });
  let picked = sheets.map((sides) => pick(sides.map(innermost), null, aspect, ROUGH_MISFIT));
  let metric: TableMetric | null = null;
  for (let round = 0; round < ROUNDS && size !== null; round++) {
    metric = tableMetric(
      picked.flatMap((one) => (one === null ? [] : [one.quad])),
      aspect,
    );
    if (metric === null) break;
    picked = sheets.map((sides) => pick(sides, metric, aspect, ROUGH_MISFIT));
  }
  return picked.map((one, index) => {
    const start = one?.quad ?? scaledQuad(rough[index]!.corners, perPreview);
    const side = Math.sqrt(polygonArea(start));
    const part = rough[index]!.loose === true ? LOOSE_REACH : REACH;
    const fine = Math.max(2, 0.7 * perPreview, (2 * part * side) / 24);
    const edges = start.map((from, side) =>
      edgesBeside(photo.full, from, start[(side + 1) % 4]!, fine).map((line) => {
        const outside = tableOutside(photo.full, line, table.colours, perPreview);
        return { ...line, outside, worth: line.borne + TABLE_OUTSIDE * outside };
      }),
    );
    const laid = pick(edges, metric, aspect, FINE_MISFIT);
    const quad = laid !== null && isNear(laid.quad, start, 4 * fine) ? laid.quad : null;
    const corners = quad ?? start;
    const off = metric === null ? [0] : offSize(metric, corners, aspect).map(Math.abs);
    return {
      corners,
      borne: quad === null ? [0, 0, 0, 0] : laid!.lines.map(({ borne }) => borne),
      outside: laid?.lines.map(({ outside }) => outside) ?? [0, 0, 0, 0],
      offSize: Math.max(...off),
      lead: one?.lead ?? 0,
    };
  });
}

function isNear(quad: Quad<'photo'>, other: Quad<'photo'>, within: number): boolean {
  return quad.every(
    (corner, at) => Math.hypot(corner.x - other[at]!.x, corner.y - other[at]!.y) < within,
  );
}

/** The sheets told right show the size that tells the others right. */
const ROUNDS = 3;

type Rough = Pick<Candidate, 'corners' | 'byMotifs' | 'loose'>;

/** A line that a side may lie on, with what speaks for it. */
interface Weighed extends Line {
  readonly worth: number;
  readonly outside: number;
}

type Guess = SideGuess & Weighed;

/** What counts for an edge is above all that table begins there; the border of a print can be the stronger edge. */
const TABLE_OUTSIDE = 0.8;

/** Edges so much worse than the best are not tried with those of the other sides. */
const FAR_WORSE = 1;

/** Part of a side within which its true place is looked for. */
const REACH = 0.036;
/** Motifs may end well within the border. */
const LOOSE_REACH = 0.08;

function guessSide(
  photo: OpenedPixels,
  quad: Quad<'photo'>,
  side: number,
  from: PhotoPoint,
  table: Table,
  perPreview: number,
  part: number,
): Guess[] {
  const to = quad[(side + 1) % 4]!;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const reach = Math.max(part * length, 3 * perPreview);
  const guesses = guessesOf(photo.full, from, to, reach);
  const strongest = Math.max(1, ...guesses.map(({ strength }) => strength));
  const weighed = guesses.map((guess) => {
    const outside = tableOutside(photo.full, guess, table.colours, perPreview);
    const worth = guess.borne + 0.5 * (guess.strength / strongest) + TABLE_OUTSIDE * outside;
    return { ...guess, worth, outside };
  });
  const best = Math.max(...weighed.map(({ worth }) => worth));
  return weighed.filter(({ worth }) => worth > best - FAR_WORSE);
}

interface Picked {
  readonly quad: Quad<'photo'>;
  readonly lead: number;
  readonly lines: readonly Weighed[];
}

/**
 * The four edges that make the best sheet: well borne out, and of a sheet's size where that is known. `misfit` is the
 * part of a side by which it may be off its size before that counts like an edge half borne out.
 */
function pick(
  sides: readonly (readonly Weighed[])[],
  metric: TableMetric | null,
  aspect: number,
  misfit: number,
): Picked | null {
  let best: Omit<Picked, 'lead'> | null = null;
  const tried: { readonly lines: readonly Weighed[]; readonly value: number }[] = [];
  let most = -Infinity;
  for (const upper of sides[0]!)
    for (const right of sides[1]!)
      for (const lower of sides[2]!)
        for (const left of sides[3]!) {
          const lines = [upper, right, lower, left];
          const quad = quadOfLines(lines);
          if (quad === null) continue;
          const value =
            upper.worth +
            right.worth +
            lower.worth +
            left.worth -
            (metric === null ? 0 : SIZE_COUNTS * misfitOf(offSize(metric, quad, aspect), misfit));
          tried.push({ lines, value });
          if (value > most) {
            most = value;
            best = { quad, lines };
          }
        }
  if (best === null) return null;
  const { lines } = best;
  const apart = DISTINCT * Math.sqrt(polygonArea(best.quad));
  let next = most - MOST_LEAD;
  for (const other of tried)
    if (
      other.value > next &&
      other.lines.some((line, side) => distance(line, lines[side]!) > apart)
    )
      next = other.value;
  return { ...best, lead: most - next };
}

const SIZE_COUNTS = 0.45;
const ROUGH_MISFIT = 0.007;
const FINE_MISFIT = 0.004;
const MOST_LEAD = 3;
/** Part of a side by which two lines lie apart at an end to count as two. */
const DISTINCT = 0.007;

function misfitOf(off: readonly number[], unit: number): number {
  return off.reduce((sum, value) => sum + Math.min(3, Math.abs(value) / unit), 0);
}

function distance(p: Line, q: Line): number {
  return Math.max(
    Math.hypot(p.from.x - q.from.x, p.from.y - q.from.y),
    Math.hypot(p.to.x - q.to.x, p.to.y - q.to.y),
  );
}

/** Of a side without a size to go by, the inner one of the edges that fit about equally well. */
function innermost(guesses: readonly Guess[]): Guess[] {
  const best = Math.max(...guesses.map(({ worth }) => worth));
  const good = guesses.filter(({ worth }) => worth > best - 0.15);
  const inner = good.reduce((least, guess) => (guess.out < least.out ? guess : least));
  return guesses.map((guess) => (guess === inner ? { ...guess, worth: best + 0.01 } : guess));
}

function quadOfLines(lines: readonly Line[]): Quad<'photo'> | null {
  const corners = lines.map((line, side) => crossing(lines[(side + 3) % 4]!, line));
  if (corners.some((corner) => corner === null)) return null;
  const quad = corners as unknown as Quad<'photo'>;
  return isConvex(quad) ? quad : null;
}

/**
 * Moves the sides of a rough quad to where the table begins, by the middle of many places along each side:
 * motifs of a cloth that hang on to the sheet's region do not count then.
 */
function ontoTable(
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
