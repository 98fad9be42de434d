import type { PhotoPoint } from '../geometry/points.ts';
import type { Picture } from './picture.ts';
import { rankInPlace } from './surface.ts';

/** Ends of a side are left out: corners may be curled, rounded or torn. */
const ENDS = 0.04;
export const SAMPLES = 72;

export interface SideProfiles {
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

export function profilesOf(
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

export function movedBy(
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
