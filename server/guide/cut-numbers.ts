import { toMillimetres } from '../lengths/length.ts';
import type { Size } from '../lengths/length.ts';
import type { CutLine } from './cut-lines.ts';
import type { Spot } from './drawing.ts';
import type { FinishLine } from './finish-lines.ts';
import type { Taken } from './laid.ts';
import { spotOn } from './track.ts';
import type { Track } from './track.ts';

/** Radius of a number on a drawing, in units of the drawing. */
export const RADIUS = 2.9;

/** Parts of a cut's length at which its number may sit, the best first: near the edges it hides least. */
const ON_CUT = [0.08, 0.92, 0.25, 0.75, 0.5, 0.38, 0.62] as const;
/** A finish ends in pencil marks and in the corners of other pieces, so its number keeps off its ends. */
const ON_FINISH = [0.25, 0.75, 0.38, 0.62, 0.5, 0.15, 0.85] as const;

/** Where the numbers of a sheet's cuts, then those of its finishes, stand on its drawing. */
export interface NumberSpots {
  readonly cuts: Spot[];
  readonly finishes: Spot[];
}

/** A number sits on its line, near an end, or aside where another number lies already. */
export function numberSpots(
  lines: readonly CutLine[],
  finishes: readonly FinishLine[],
  scale: number,
  sheet: Size,
): NumberSpots {
  const used: Spot[] = [];
  const width = scale * toMillimetres(sheet.width);
  const height = scale * toMillimetres(sheet.height);
  const within = (at: number, end: number): number => Math.min(end - RADIUS, Math.max(RADIUS, at));
  const place = (tracks: readonly Track[], parts: readonly number[]): Spot => {
    const spots = tracks.flatMap((track) =>
      parts.map((part) => {
        const { x, y } = spotOn(track, part);
        return { x: within(scale * x, width), y: within(scale * y, height) };
      }),
    );
    const free = spots.find((spot) =>
      used.every(({ x, y }) => Math.hypot(spot.x - x, spot.y - y) > 2.2 * RADIUS),
    );
    const spot = free ?? spots[0]!;
    used.push(spot);
    return spot;
  };
  return {
    cuts: lines.map(({ from, to }) => place([[from, to]], ON_CUT)),
    finishes: finishes.map(({ tracks }) => place(tracks, ON_FINISH)),
  };
}

/** The room that a number takes. */
export function taken({ x, y }: Spot): Taken {
  return { x: x - RADIUS, y: y - RADIUS, width: 2 * RADIUS, height: 2 * RADIUS };
}
