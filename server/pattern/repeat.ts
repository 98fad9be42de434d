import type { Autocorrelation } from './autocorrelation.ts';

/**
 * The length after which the print is itself again, both across and down the sheet: the longer of the
 * shortest shift across and the shortest shift down.
 *
 * Takes       the autocorrelation of the print.
 * Gives       the shift in fields of its grid, to a small part of a field; null when the print does
 *             not repeat (or only once in more than two thirds of the sheet).
 * Good up to  repeats of three fields or more; a print that runs plain in one direction (stripes) has
 *             the repeat of the other.
 */
export function findRepeat(likeness: Autocorrelation): number | null {
  const furthest = Math.floor(FURTHEST * (likeness.reach + 1));
  const across = axisRepeat((shift) => likeness.at(shift, 0), furthest);
  const down = axisRepeat((shift) => likeness.at(0, shift), furthest);
  if (across === null || down === null) return across ?? down;
  return Math.max(across, down);
}

const FURTHEST = 0.66;
/** A print that repeats is at least this like itself one repeat further on ... */
const ALIKE = 0.6;
/** ... and at least this much less like itself in between. */
const DIP = 0.25;
/** The first peak may be this much lower than the best one: noise and light blur them all. */
const NEARLY = 0.85;

function axisRepeat(at: (shift: number) => number, furthest: number): number | null {
  const peaks: number[] = [];
  let lowest = at(0);
  for (let shift = 1; shift < furthest; shift++) {
    const here = at(shift);
    if (here > at(shift - 1) && here >= at(shift + 1) && here >= ALIKE && here - lowest >= DIP)
      peaks.push(shift);
    lowest = Math.min(lowest, here);
  }
  const best = Math.max(...peaks.map(at));
  const first = peaks.find((shift) => at(shift) >= NEARLY * best);
  return first === undefined ? null : sharpened(at, first, furthest);
}

/** The top of the parabola through three points; later repeats, found near their place, make it exact. */
function sharpened(at: (shift: number) => number, first: number, furthest: number): number {
  let length = topNear(at, first);
  for (let times = 2; times * length < furthest - 1; times++) {
    const guess = Math.round(times * length);
    const around = [guess - 1, guess, guess + 1];
    const top = around.reduce((best, shift) => (at(shift) > at(best) ? shift : best));
    if (at(top) < ALIKE || at(top - 1) > at(top) || at(top + 1) > at(top)) break;
    length = topNear(at, top) / times;
  }
  return length;
}

function topNear(at: (shift: number) => number, shift: number): number {
  const [before, here, after] = [at(shift - 1), at(shift), at(shift + 1)];
  const bend = before - 2 * here + after;
  return bend < 0 ? shift + (before - after) / (2 * bend) : shift;
}
