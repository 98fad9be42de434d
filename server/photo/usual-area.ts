import type { Candidate } from './find-sheets.ts';

/** The area that most of the covered table agrees on. */
export function usualArea(candidates: readonly Candidate[]): number {
  let best = 0;
  let most = -1;
  for (const { area } of candidates) {
    const alike = candidates.filter((other) => other.area > 0.65 * area && other.area < 1.5 * area);
    const covered = alike.reduce((sum, other) => sum + other.area, 0);
    if (covered > most) {
      most = covered;
      best = area;
    }
  }
  return best;
}
