import type { PhotoPoint, Quad } from '../geometry/points.ts';
import type { Picture } from './picture.ts';

/** A quad whose sides were laid onto the edges seen in the large picture. */
export interface Refined {
  readonly corners: Quad<'photo'>;
  /** For each side, the part of it along which an edge was seen, from 0 to 1. */
  readonly borne: readonly number[];
}

export interface Line {
  /** Two points of it. */
  readonly from: PhotoPoint;
  readonly to: PhotoPoint;
  readonly borne: number;
}

/**
 * Lays each side of a quad onto the edge of the sheet, to a fraction of a pixel.
 *
 * Takes       the picture, a quad in its pixels, and how far off (in pixels) the sides may be.
 * Good up to  some 0.05 pixels on a plain edge; along a side the line that is borne out longest wins,
 *             not the strongest piece of an edge, so a motif near the border does not pull it.
 */
export function layOntoEdges(picture: Picture, quad: Quad<'photo'>, reach: number): Refined {
  const lines = quad.map((from, side) => layLine(picture, from, quad[(side + 1) % 4]!, reach));
  const corners = lines.map((line, side) => crossing(lines[(side + 3) % 4]!, line) ?? quad[side]!);
  const sane = corners.every(
    (corner, side) => Math.hypot(corner.x - quad[side]!.x, corner.y - quad[side]!.y) < 4 * reach,
  );
  return {
    corners: sane ? (corners as unknown as Quad<'photo'>) : quad,
    borne: lines.map(({ borne }) => (sane ? borne : 0)),
  };
}

/** Ends of a side are left out: corners may be curled, rounded or torn. */
const ENDS = 0.04;
const SAMPLES = 72;
/** Pixels on both sides of an edge that are looked at to know the noise. */
const QUIET = 6;

function layLine(picture: Picture, from: PhotoPoint, to: PhotoPoint, reach: number): Line {
  // Wider than asked, so that the quiet on both sides of the edge tells what is noise.
  const side = profilesOf(picture, from, to, reach + QUIET, 0.5);
  if (side === null) return { from, to, borne: 0 };
  const { profiles, places, steps, floor } = side;
  const [start, end] = bestOffsets(
    side,
    (middle) => Math.abs(middle - (steps - 1) / 2) * side.step <= reach,
  );
  const { a, b, borne } = settle(profiles, places, steps, floor, start, end);
  const [movedFrom, movedTo] = movedBy(side, a, a + b);
  return { from: movedFrom, to: movedTo, borne: borne * (profiles.length / SAMPLES) };
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
  const { step, steps, profiles, places, floor } = side;
  const guesses: SideGuess[] = [];
  const taken: number[] = [];
  const apart = Math.max(3, 4 / step);
  while (guesses.length < MOST_GUESSES) {
    const [start, end] = bestOffsets(side, (middle) =>
      taken.every((other) => Math.abs(other - middle) > apart),
    );
    taken.push((start + end) / 2);
    let borne = 0;
    let strength = 0;
    profiles.forEach((profile, i) => {
      const place = Math.round(start + (end - start) * places[i]!);
      const near = Math.max(profile[place - 1] ?? 0, profile[place]!, profile[place + 1] ?? 0);
      if (near > floor) borne++;
      strength += near / profiles.length;
    });
    borne /= SAMPLES;
    if (borne < LEAST_BORNE && guesses.length > 0) break;
    const [movedFrom, movedTo] = movedBy(side, start, end);
    const out = ((start + end) / 2 - (steps - 1) / 2) * step;
    guesses.push({ from: movedFrom, to: movedTo, borne, out, strength });
  }
  return guesses;
}

const MOST_GUESSES = 5;
const LEAST_BORNE = 0.4;

interface SideProfiles {
  readonly from: PhotoPoint;
  readonly to: PhotoPoint;
  readonly normal: PhotoPoint;
  /** Steepness across the side, from inside to outside, at each sample along it. */
  readonly profiles: readonly Float32Array[];
  /** Where along the side each sample lies, 0 to 1. */
  readonly places: readonly number[];
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
  const profiles: Float32Array[] = [];
  const places: number[] = [];
  for (let i = 0; i < SAMPLES; i++) {
    const t = ENDS + ((1 - 2 * ENDS) * (i + 0.5)) / SAMPLES;
    const x = from.x + t * (to.x - from.x);
    const y = from.y + t * (to.y - from.y);
    if (x < 2 || y < 2 || x > picture.width - 2 || y > picture.height - 2) continue;
    profiles.push(steepnessAcross(picture, x, y, normal, steps, step));
    places.push(t);
  }
  if (profiles.length < SAMPLES / 4) return null;
  return { from, to, normal, profiles, places, steps, step, floor: noiseFloor(profiles) };
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

/** How fast the three channels change across the side at offsets a step apart. */
function steepnessAcross(
  picture: Picture,
  x: number,
  y: number,
  normal: PhotoPoint,
  steps: number,
  step: number,
): Float32Array {
  const values = new Float32Array(3 * (steps + 4));
  for (let s = 0; s < steps + 4; s++) {
    const d = (s - 2 - (steps - 1) / 2) * step;
    sample(picture, x + d * normal.x - 0.5, y + d * normal.y - 0.5, values, 3 * s);
  }
  const out = new Float32Array(steps);
  for (let s = 0; s < steps; s++) {
    let sum = 0;
    for (let c = 0; c < 3; c++) {
      const change = values[3 * (s + 4) + c]! - values[3 * s + c]!;
      sum += change * change;
    }
    out[s] = Math.sqrt(sum);
  }
  return out;
}

function sample(
  { width, height, rgb }: Picture,
  x: number,
  y: number,
  out: Float32Array,
  at: number,
): void {
  const cx = x < 0 ? 0 : x > width - 1.001 ? width - 1.001 : x;
  const cy = y < 0 ? 0 : y > height - 1.001 ? height - 1.001 : y;
  const left = cx | 0;
  const top = cy | 0;
  const fx = cx - left;
  const fy = cy - top;
  const p = 3 * (top * width + left);
  const q = p + 3 * width;
  for (let c = 0; c < 3; c++) {
    const upper = rgb[p + c]! + fx * (rgb[p + 3 + c]! - rgb[p + c]!);
    const lower = rgb[q + c]! + fx * (rgb[q + 3 + c]! - rgb[q + c]!);
    out[at + c] = upper + fy * (lower - upper);
  }
}

/** Steepness that noise alone reaches: twice the lower quartile of all profiles. */
function noiseFloor(profiles: readonly Float32Array[]): number {
  const all = Float32Array.from(profiles.flatMap((profile) => [...profile])).sort();
  return Math.max(3, 2 * all[all.length >> 2]!);
}

/** The straight line through the profiles, by its offsets at both ends, along which most of them are steep. */
function bestOffsets(
  { profiles, places, steps, floor }: SideProfiles,
  free: (middle: number) => boolean,
): [number, number] {
  const cap = 4 * floor;
  const slant = Math.max(4, 0.4 * steps);
  let best: [number, number] = [(steps - 1) / 2, (steps - 1) / 2];
  let most = -1;
  for (let start = 0; start < steps; start++)
    for (let end = 0; end < steps; end++) {
      if (Math.abs(end - start) > slant || !free((start + end) / 2)) continue;
      let sum = 0;
      for (let i = 0; i < profiles.length; i++) {
        const place = (start + (end - start) * places[i]! + 0.5) | 0;
        const value = profiles[i]![place]!;
        if (value > floor) sum += value < cap ? value : cap + 0.1 * (value - cap);
      }
      if (sum > most) {
        most = sum;
        best = [start, end];
      }
    }
  return best;
}

/** Fits the line to the steepest place near it in each profile, strays weighing less and less. */
function settle(
  profiles: readonly Float32Array[],
  places: readonly number[],
  steps: number,
  floor: number,
  start: number,
  end: number,
): { a: number; b: number; borne: number } {
  let [a, b] = [start, end - start];
  let borne = 0;
  for (let round = 0; round < 4; round++) {
    const near = round === 0 ? 3 : 2;
    let [n, st, stt, sd, std] = [0, 0, 0, 0, 0];
    borne = 0;
    for (let i = 0; i < profiles.length; i++) {
      const t = places[i]!;
      const line = a + b * t;
      const peak = peakNear(profiles[i]!, line, near, steps);
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
  return { a, b, borne: borne / profiles.length };
}

function peakNear(
  profile: Float32Array,
  line: number,
  near: number,
  steps: number,
): { at: number; height: number } | null {
  let at = -1;
  let height = -1;
  const from = Math.max(1, Math.ceil(line - near));
  const to = Math.min(steps - 2, Math.floor(line + near));
  for (let s = from; s <= to; s++)
    if (profile[s]! > height) {
      height = profile[s]!;
      at = s;
    }
  if (at < 0) return null;
  const [before, after] = [profile[at - 1]!, profile[at + 1]!];
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
