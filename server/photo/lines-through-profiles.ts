import type { SideProfiles } from './side-profiles.ts';

/**
 * How steep the profiles are along each straight line through them: entry `start * steps + end` for the line
 * that begins and ends at these steps; below 0 where a line slants too much or was not asked for.
 */
export function scoresOf(
  { profiles, count, places, steps, floor }: SideProfiles,
  isAsked: (middle: number) => boolean = () => true,
  { cap: times, beyond }: Counting = STRONGER,
): Float32Array {
  const cap = times * floor;
  const weighed = new Float32Array(count * steps);
  for (let k = 0; k < weighed.length; k++) {
    const value = profiles[k]!;
    if (value > floor) weighed[k] = value < cap ? value : cap + beyond * (value - cap);
  }
  const slant = Math.max(4, 0.4 * steps);
  const scores = new Float32Array(steps * steps).fill(-1);
  // Lines of one slant pass each profile at the same steps from where they begin.
  const passed = new Int32Array(count);
  const most = Math.min(steps - 1, Math.floor(slant));
  for (let run = -most; run <= most; run++) {
    for (let i = 0; i < count; i++) passed[i] = i * steps + Math.floor(run * places[i]! + 0.5);
    for (let start = Math.max(0, -run); start < steps - Math.max(0, run); start++) {
      if (!isAsked(start + run / 2)) continue;
      let sum = 0;
      for (let i = 0; i < count; i++) sum += weighed[passed[i]! + start]!;
      scores[start * steps + start + run] = sum;
    }
  }
  return scores;
}

/** How an edge counts that is steeper than the noise: in full up to so many times it, then in part. */
export interface Counting {
  readonly cap: number;
  readonly beyond: number;
}

const STRONGER: Counting = { cap: 4, beyond: 0.1 };

/** The line, by its steps at both ends, with the highest score among those whose middle is free. */
export function bestOf(
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
export function settle(
  { profiles, count, places, steps, floor }: SideProfiles,
  start: number,
  end: number,
): { a: number; b: number; borne: number } {
  let a = start;
  let b = end - start;
  let borne = 0;
  for (let round = 0; round < 4; round++) {
    const near = round === 0 ? 3 : 2;
    let n = 0;
    let st = 0;
    let stt = 0;
    let sd = 0;
    let std = 0;
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
