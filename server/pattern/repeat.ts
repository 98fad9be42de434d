import type { Autocorrelation } from './autocorrelation.ts';

/**
 * The length after which the print is itself again, both across and down the sheet: the longer of the
 * shortest shift across and the shortest shift down.
 *
 * Takes       the likeness of the print to itself, shift by shift, up to two thirds of the sheet.
 * Gives       the shift in fields of its grid, to a small part of a field; null when the print does
 *             not repeat (or only once in more than two thirds of the sheet).
 * Good up to  repeats of three fields or more; a print that runs plain in one direction (stripes) has
 *             the repeat of the other.
 */
export function findRepeat(likeness: Autocorrelation): number | null {
  const { across, down } = repeatsAlong(likeness);
  if (across === null || down === null) return across ?? down;
  return Math.max(across, down);
}

/** The shortest shift across and the shortest down after which the print is itself again, in fields; null where there is none. */
export function repeatsAlong({ across, down, furthest }: Autocorrelation): {
  readonly across: number | null;
  readonly down: number | null;
} {
  // A peak needs a shift on either side of it.
  return { across: axisRepeat(across, furthest - 1), down: axisRepeat(down, furthest - 1) };
}

/** Whether the print is itself again both across and down the sheet. */
export function repeatsBothWays(likeness: Autocorrelation): boolean {
  const { across, down } = repeatsAlong(likeness);
  return across !== null && down !== null;
}

/** Repeats are sought up to this part of the sheet; beyond it a print repeats only once. */
export const FURTHEST = 0.66;
/** A print that repeats is at least this like itself one repeat further on ... */
const ALIKE = 0.6;
/** ... and at least this much less like itself in between. */
const DIP = 0.25;
/** The first peak may be this much lower than the best one: noise and light blur them all. */
const NEARLY = 0.85;

function axisRepeat(like: Float64Array, furthest: number): number | null {
  const peaks: number[] = [];
  let lowest = like[0]!;
  for (let shift = 1; shift < furthest; shift++) {
    const here = like[shift]!;
    if (
      here > like[shift - 1]! &&
      here >= like[shift + 1]! &&
      here >= ALIKE &&
      here - lowest >= DIP
    )
      peaks.push(shift);
    lowest = Math.min(lowest, here);
  }
  const best = Math.max(...peaks.map((peak) => heightNear(like, peak)));
  const first = peaks.find((shift) => heightNear(like, shift) >= NEARLY * best);
  return first === undefined ? null : sharpened(like, first, furthest);
}

/** The top of the parabola through three points; later repeats, found near their place, make it exact. */
function sharpened(like: Float64Array, first: number, furthest: number): number {
  let length = topNear(like, first);
  for (let times = 2; times * length < furthest - 1; times++) {
    const guess = Math.round(times * length);
    const around = [guess - 1, guess, guess + 1];
    const top = around.reduce((best, shift) => (like[shift]! > like[best]! ? shift : best));
    if (like[top]! < ALIKE || like[top - 1]! > like[top]! || like[top + 1]! > like[top]!) break;
    length = topNear(like, top) / times;
  }
  return length;
}

/** The height of that parabola: a peak midway between two shifts is higher than either shows. */
function heightNear(like: Float64Array, shift: number): number {
  const [before, here, after] = [like[shift - 1]!, like[shift]!, like[shift + 1]!];
  const bend = before - 2 * here + after;
  return bend < 0 ? here - (before - after) ** 2 / (8 * bend) : here;
}

function topNear(like: Float64Array, shift: number): number {
  const [before, here, after] = [like[shift - 1]!, like[shift]!, like[shift + 1]!];
  const bend = before - 2 * here + after;
  return bend < 0 ? shift + (before - after) / (2 * bend) : shift;
}
