import type { PhotoPoint, Quad } from '../geometry/points.ts';
import { polygonArea } from '../geometry/polygon.ts';
import { inReadingOrder, isConvex } from '../geometry/quad.ts';
import type { LabImage } from '../colour/lab.ts';
import type { OpenedPixels, PhotoAsk } from './picture.ts';
import { crossing, guessesOf, layOntoEdges } from './side-lines.ts';
import type { Refined, SideGuess } from './side-lines.ts';
import { offSize, tableMetric } from './table-metric.ts';
import type { TableMetric } from './table-metric.ts';
import type { Table } from './table.ts';
import { scaledQuad } from './find-sheets.ts';
import type { Candidate } from './find-sheets.ts';

/** What a quad settled to, in pixels of the large picture, and how far its sides are off a sheet's size. */
export interface Settled extends Refined {
  readonly offSize: number;
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
  const sheets = rough.map(({ corners, byMotifs }) => {
    const onTable = byMotifs === true ? corners : ontoTable(corners, table.reached, image);
    const near = scaledQuad(onTable, perPreview);
    return near.map((from, side) => guessSide(photo, near, side, from, table, image, perPreview));
  });
  const first = sheets.map((sides) => pick(sides, null, aspect));
  const metric = size === null ? null : tableMetric(first.filter(isQuad), aspect);
  const second = metric === null ? first : sheets.map((sides) => pick(sides, metric, aspect));
  return second.map((quad, index) => {
    const start = quad ?? scaledQuad(rough[index]!.corners, perPreview);
    const side = Math.sqrt(polygonArea(start));
    const fine = Math.max(2, 0.7 * perPreview, (2 * REACH * side) / 24);
    const refined = layOntoEdges(photo.full, start, fine);
    const off = metric === null ? [0] : offSize(metric, refined.corners, aspect).map(Math.abs);
    return { ...refined, offSize: Math.max(...off) };
  });
}

type Rough = Pick<Candidate, 'corners' | 'byMotifs'>;

function isQuad(quad: Quad<'photo'> | null): quad is Quad<'photo'> {
  return quad !== null;
}

interface Guess extends SideGuess {
  readonly worth: number;
}

/** Part of a side within which its true place is looked for. */
const REACH = 0.036;

function guessSide(
  photo: OpenedPixels,
  quad: Quad<'photo'>,
  side: number,
  from: PhotoPoint,
  table: Table,
  image: LabImage,
  perPreview: number,
): Guess[] {
  const to = quad[(side + 1) % 4]!;
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const reach = Math.max(REACH * length, 3 * perPreview);
  const guesses = guessesOf(photo.full, from, to, reach);
  const strongest = Math.max(1, ...guesses.map(({ strength }) => strength));
  return guesses.map((guess) => ({
    ...guess,
    worth:
      guess.borne +
      0.5 * (guess.strength / strongest) +
      0.35 * tableOutside(guess, table.reached, image, perPreview),
  }));
}

/**
 * The part of a line with table just outside it and none just inside; table in the shadow of the sheet counts
 * as table, so that the edge of a shadow is not taken for that of the sheet.
 */
function tableOutside(
  { from, to }: SideGuess,
  reached: Uint8Array,
  image: LabImage,
  perPreview: number,
): number {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const out = { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
  let sum = 0;
  const count = 40;
  for (let i = 0; i < count; i++) {
    const t = 0.04 + (0.92 * (i + 0.5)) / count;
    const x = (from.x + t * (to.x - from.x)) / perPreview;
    const y = (from.y + t * (to.y - from.y)) / perPreview;
    const at = (d: number): boolean => isTable(x + d * out.x, y + d * out.y, out, reached, image);
    if ([1.5, 2.5, 3.5].some(at) && !at(-1.5) && !at(-2.5)) sum++;
  }
  return sum / count;
}

/** Preview pixels within which a shadow gives way to lit table. */
const SHADOW = 12;

function isTable(
  x: number,
  y: number,
  out: PhotoPoint,
  reached: Uint8Array,
  { width, height, lab }: LabImage,
): boolean {
  const pixelAt = (d: number): number => {
    const px = Math.floor(x + d * out.x);
    const py = Math.floor(y + d * out.y);
    return px >= 0 && py >= 0 && px < width && py < height ? py * width + px : -1;
  };
  const here = pixelAt(0);
  if (here < 0) return false;
  if (reached[here] === 1) return true;
  for (let d = 1; d <= SHADOW; d++) {
    const lit = pixelAt(d);
    if (lit < 0 || reached[lit] === 0) continue;
    // Less light scales (L + 16), a and b alike.
    const dimmed = (lab[3 * here]! + 16) / (lab[3 * lit]! + 16);
    return (
      dimmed > 0.6 &&
      dimmed < 0.985 &&
      Math.abs(lab[3 * here + 1]! - dimmed * lab[3 * lit + 1]!) < ALIKE &&
      Math.abs(lab[3 * here + 2]! - dimmed * lab[3 * lit + 2]!) < ALIKE
    );
  }
  return false;
}

const ALIKE = 2.5;

/** The four edges that make the best sheet: well borne out, and of a sheet's size where that is known. */
function pick(
  sides: readonly (readonly Guess[])[],
  metric: TableMetric | null,
  aspect: number,
): Quad<'photo'> | null {
  if (metric === null) return quadOfLines(sides.map(innermost));
  let best: Quad<'photo'> | null = null;
  let most = -Infinity;
  for (const upper of sides[0]!)
    for (const right of sides[1]!)
      for (const lower of sides[2]!)
        for (const left of sides[3]!) {
          const quad = quadOfLines([upper, right, lower, left]);
          if (quad === null) continue;
          const off = offSize(metric, quad, aspect);
          const misfit = off.reduce((sum, value) => sum + Math.min(3, Math.abs(value) / 0.007), 0);
          const value = upper.worth + right.worth + lower.worth + left.worth - 0.45 * misfit;
          if (value > most) {
            most = value;
            best = quad;
          }
        }
  return best;
}

function innermost(guesses: readonly Guess[]): Guess {
  const best = Math.max(...guesses.map(({ worth }) => worth));
  const good = guesses.filter(({ worth }) => worth > best - 0.15);
  return good.reduce((inner, guess) => (guess.out < inner.out ? guess : inner));
}

function quadOfLines(lines: readonly SideGuess[]): Quad<'photo'> | null {
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
    if (places.length < 20) return { from, to, borne: 0, out: 0, strength: 0 };
    const { a, b } = steadyLine(places);
    const moved = (point: PhotoPoint, by: number): PhotoPoint => ({
      x: point.x + by * normal.x,
      y: point.y + by * normal.y,
    });
    return { from: moved(from, a), to: moved(to, a + b), borne: 1, out: 0, strength: 0 };
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
