import type { PhotoPoint } from '../geometry/points.ts';
import type { Picture } from './picture.ts';
import { rankInPlace } from './surface.ts';

export interface Line {
  /** Two points of it. */
  readonly from: PhotoPoint;
  readonly to: PhotoPoint;
  readonly borne: number;
}

/**
 * Lays a side of a quad onto the edge of the sheet, to a fraction of a pixel.
 *
 * Takes       the picture, the ends of the side in its pixels, and how far off (in pixels) it may be.
 * Gives       the line found close by and the one found within all of the reach, which may slant over to a
 *             stripe beside the edge: what else is known of the sheet has to choose.
 * Good up to  some 0.05 pixels on a plain edge; the line that is borne out longest wins, not the strongest piece
 *             of an edge, so a motif near the border does not pull it.
 */
export function edgesBeside(
  picture: Picture,
  from: PhotoPoint,
  to: PhotoPoint,
  reach: number,
): readonly Line[] {
  return [NEAR, reach].map((within) => layLine(picture, from, to, within));
}

/** Pixels by which a side may be off that was already seen at its place. */
const NEAR = 1.2;

/** Ends of a side are left out: corners may be curled, rounded or torn. */
const ENDS = 0.04;
const SAMPLES = 72;
/** Pixels on both sides of an edge that are looked at to know the noise. */
const QUIET = 6;

function layLine(picture: Picture, from: PhotoPoint, to: PhotoPoint, reach: number): Line {
  // Wider than asked, so that the quiet on both sides of the edge tells what is noise.
  const side = profilesOf(picture, from, to, reach + QUIET, 0.5);
  if (side === null) return { from, to, borne: 0 };
  const isNear = (middle: number): boolean =>
    Math.abs(middle - (side.steps - 1) / 2) * side.step <= reach;
  const [start, end] = bestOf(side, scoresOf(side, isNear), isNear);
  const { a, b, borne } = settle(side, start, end);
  const [movedFrom, movedTo] = movedBy(side, a, a + b);
  return { from: movedFrom, to: movedTo, borne: borne * (side.count / SAMPLES) };
}

/** A place where the side of a sheet may be: offsets of its ends outward, and how well edges bear it out. */
export interface SideGuess extends Line {
  /** Mean offset outward in pixels. */
  readonly out: number;
  /** Mean change of the encoded values across it. */
  readonly strength: number;
}

/**
 * The few straight edges near a side, best borne out first: the sheet's own border, its shadow's,
 * the neighbour's across a narrow gap, a stripe of the print.
 */
export function guessesOf(
  picture: Picture,
  from: PhotoPoint,
  to: PhotoPoint,
  reach: number,
): SideGuess[] {
  const side = profilesOf(picture, from, to, reach, Math.max(0.5, reach / 24));
  if (side === null) return [{ from, to, borne: 0, out: 0, strength: 0 }];
  const { step, steps, profiles, count, places, floor } = side;
  const guesses: SideGuess[] = [];
  const scores = scoresOf(side);
  const taken: number[] = [];
  while (guesses.length < MOST_GUESSES) {
    const [start, end] = bestOf(side, scores, (middle) =>
      taken.every((other) => Math.abs(other - middle) > apart(step)),
    );
    taken.push((start + end) / 2);
    let borne = 0;
    let strength = 0;
    for (let i = 0; i < count; i++) {
      const at = i * steps + Math.round(start + (end - start) * places[i]!);
      const near = Math.max(profiles[at - 1] ?? 0, profiles[at]!, profiles[at + 1] ?? 0);
      if (near > floor) borne++;
      strength += near / count;
    }
    borne /= SAMPLES;
    if (borne < LEAST_BORNE && guesses.length > 0) break;
    const [movedFrom, movedTo] = movedBy(side, start, end);
    const out = ((start + end) / 2 - (steps - 1) / 2) * step;
    guesses.push({ from: movedFrom, to: movedTo, borne, out, strength });
  }
  return guesses;
}

/** Steps by which two guesses lie apart at least. */
function apart(step: number): number {
  return Math.max(2, 2.5 / step);
}

const MOST_GUESSES = 6;
const LEAST_BORNE = 0.4;

interface SideProfiles {
  readonly from: PhotoPoint;
  readonly to: PhotoPoint;
  readonly normal: PhotoPoint;
  /** Steepness across the side, from inside to outside, sample after sample along it. */
  readonly profiles: Float32Array;
  /** How many samples. */
  readonly count: number;
  /** Where along the side each sample lies, 0 to 1. */
  readonly places: Float32Array;
  readonly steps: number;
  /** Pixels from step to step. */
  readonly step: number;
  readonly floor: number;
}

function profilesOf(
  picture: Picture,
  from: PhotoPoint,
  to: PhotoPoint,
  reach: number,
  step: number,
): SideProfiles | null {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 8) return null;
  // Out of the quad, since its corners go clockwise with y down.
  const normal = { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
  const steps = 2 * Math.ceil(reach / step) + 1;
  const profiles = new Float32Array(SAMPLES * steps);
  const places = new Float32Array(SAMPLES);
  const values = new Float32Array(3 * (steps + 4));
  let count = 0;
  for (let i = 0; i < SAMPLES; i++) {
    const t = ENDS + ((1 - 2 * ENDS) * (i + 0.5)) / SAMPLES;
    const x = from.x + t * (to.x - from.x);
    const y = from.y + t * (to.y - from.y);
    if (x < 2 || y < 2 || x > picture.width - 2 || y > picture.height - 2) continue;
    steepnessAcross(
      picture,
      x,
      y,
      normal,
      step,
      values,
      profiles.subarray(count * steps, (count + 1) * steps),
    );
    places[count++] = t;
  }
  if (count < SAMPLES / 4) return null;
  const floor = noiseFloor(profiles.subarray(0, count * steps));
  return { from, to, normal, profiles, count, places, steps, step, floor };
}

function movedBy(
  { from, to, normal, steps, step }: SideProfiles,
  start: number,
  end: number,
): [PhotoPoint, PhotoPoint] {
  const moved = (point: PhotoPoint, place: number): PhotoPoint => {
    const out = (place - (steps - 1) / 2) * step;
    return { x: point.x + out * normal.x, y: point.y + out * normal.y };
  };
  return [moved(from, start), moved(to, end)];
}

/** How fast the three channels change across the side at offsets a step apart, written to `out`. */
function steepnessAcross(
  { width, height, rgb }: Picture,
  x: number,
  y: number,
  normal: PhotoPoint,
  step: number,
  values: Float32Array,
  out: Float32Array,
): void {
  const steps = out.length;
  for (let s = 0; s < steps + 4; s++) {
    const d = (s - 2 - (steps - 1) / 2) * step;
    const px = x + d * normal.x - 0.5;
    const py = y + d * normal.y - 0.5;
    const cx = px < 0 ? 0 : px > width - 1.001 ? width - 1.001 : px;
    const cy = py < 0 ? 0 : py > height - 1.001 ? height - 1.001 : py;
    const left = cx | 0;
    const top = cy | 0;
    const fx = cx - left;
    const fy = cy - top;
    const p = 3 * (top * width + left);
    const q = p + 3 * width;
    for (let c = 0; c < 3; c++) {
      const upper = rgb[p + c]! + fx * (rgb[p + 3 + c]! - rgb[p + c]!);
      const lower = rgb[q + c]! + fx * (rgb[q + 3 + c]! - rgb[q + c]!);
      values[3 * s + c] = upper + fy * (lower - upper);
    }
  }
  for (let s = 0, at = 0; s < steps; s++, at += 3) {
    const r = values[at + 12]! - values[at]!;
    const g = values[at + 13]! - values[at + 1]!;
    const b = values[at + 14]! - values[at + 2]!;
    out[s] = Math.sqrt(r * r + g * g + b * b);
  }
}

/** Steepness that noise alone reaches: twice the lower quartile of all profiles. */
function noiseFloor(profiles: Float32Array): number {
  return Math.max(3, 2 * rankInPlace(profiles.slice(), profiles.length >> 2));
}

/**
 * How steep the profiles are along each straight line through them: entry `start * steps + end` for the line
 * that begins and ends at these steps; below 0 where a line slants too much or was not asked for.
 */
function scoresOf(
  { profiles, count, places, steps, floor }: SideProfiles,
  isAsked: (middle: number) => boolean = () => true,
): Float32Array {
  const cap = 4 * floor;
  const weighed = new Float32Array(count * steps);
  for (let k = 0; k < weighed.length; k++) {
    const value = profiles[k]!;
    if (value > floor) weighed[k] = value < cap ? value : cap + 0.1 * (value - cap);
  }
  const slant = Math.max(4, 0.4 * steps);
  const scores = new Float32Array(steps * steps).fill(-1);
  for (let start = 0; start < steps; start++) {
    const from = Math.max(0, Math.ceil(start - slant));
    const to = Math.min(steps - 1, Math.floor(start + slant));
    for (let end = from; end <= to; end++) {
      if (!isAsked((start + end) / 2)) continue;
      const run = end - start;
      let sum = 0;
      for (let i = 0, row = 0; i < count; i++, row += steps)
        sum += weighed[row + ((start + run * places[i]! + 0.5) | 0)]!;
      scores[start * steps + end] = sum;
    }
  }
  return scores;
}

/** The line, by its steps at both ends, with the highest score among those whose middle is free. */
function bestOf(
  { steps }: SideProfiles,
  scores: Float32Array,
  isFree: (middle: number) => boolean,
): [number, number] {
  const free = Uint8Array.from({ length: 2 * steps }, (_, twice) => (isFree(twice / 2) ? 1 : 0));
  let best = -1;
  let most = -1;
  for (let start = 0, at = 0; start < steps; start++)
    for (let end = 0; end < steps; end++, at++)
      if (scores[at]! > most && free[start + end] === 1) {
        most = scores[at]!;
        best = at;
      }
  if (best < 0) return [(steps - 1) / 2, (steps - 1) / 2];
  return [Math.floor(best / steps), best % steps];
}

/** Fits the line to the steepest place near it in each profile, strays weighing less and less. */
function settle(
  { profiles, count, places, steps, floor }: SideProfiles,
  start: number,
  end: number,
): { a: number; b: number; borne: number } {
  let [a, b] = [start, end - start];
  let borne = 0;
  for (let round = 0; round < 4; round++) {
    const near = round === 0 ? 3 : 2;
    let [n, st, stt, sd, std] = [0, 0, 0, 0, 0];
    borne = 0;
    for (let i = 0; i < count; i++) {
      const t = places[i]!;
      const line = a + b * t;
      const peak = peakNear(profiles, i * steps, line, near, steps);
      if (peak === null || peak.height < floor) continue;
      const off = (peak.at - line) / (near + 1);
      const weight = (1 - off * off) ** 2 * Math.min(1, peak.height / (4 * floor));
      borne++;
      n += weight;
      st += weight * t;
      stt += weight * t * t;
      sd += weight * peak.at;
      std += weight * t * peak.at;
    }
    const spread = n * stt - st * st;
    if (n === 0 || spread < 1e-9) break;
    b = (n * std - st * sd) / spread;
    a = (sd - b * st) / n;
  }
  return { a, b, borne: borne / count };
}

function peakNear(
  profiles: Float32Array,
  row: number,
  line: number,
  near: number,
  steps: number,
): { at: number; height: number } | null {
  let at = -1;
  let height = -1;
  const from = Math.max(1, Math.ceil(line - near));
  const to = Math.min(steps - 2, Math.floor(line + near));
  for (let s = from; s <= to; s++)
    if (profiles[row + s]! > height) {
      height = profiles[row + s]!;
      at = s;
    }
  if (at < 0) return null;
  const before = profiles[row + at - 1]!;
  const after = profiles[row + at + 1]!;
  const bend = before - 2 * height + after;
  const shift = bend < 0 ? (0.5 * (before - after)) / bend : 0;
  return { at: at + Math.max(-0.5, Math.min(0.5, shift)), height };
}

export function crossing(first: Line, second: Line): PhotoPoint | null {
  const [ux, uy] = [first.to.x - first.from.x, first.to.y - first.from.y];
  const [vx, vy] = [second.to.x - second.from.x, second.to.y - second.from.y];
  const across = ux * vy - uy * vx;
  if (Math.abs(across) < 1e-6) return null;
  const t = ((second.from.x - first.from.x) * vy - (second.from.y - first.from.y) * vx) / across;
  return { x: first.from.x + t * ux, y: first.from.y + t * uy };
}
