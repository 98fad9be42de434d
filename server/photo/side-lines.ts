import type { PhotoPoint } from '../geometry/points.ts';
import { bestOf, scoresOf, settle } from './lines-through-profiles.ts';
import type { Picture } from './picture.ts';
import { SAMPLES, movedBy, profilesOf } from './side-profiles.ts';

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
 * Good up to  some 0.2 pixels on a plain edge, 0.35 where a lens blurs a dark thing before a light one, which then
 *             looks that much smaller in encoded values; the line that is borne out longest wins, not the strongest piece
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
