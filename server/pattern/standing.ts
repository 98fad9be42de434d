import type { Autocorrelation } from './autocorrelation.ts';
import { momentsOf } from './grid.ts';
import type { Grid } from './grid.ts';
import { isItselfTurned } from './itself-turned.ts';
import { repeatsBothWays } from './repeat.ts';
import { turnedLikeness } from './turned-likeness.ts';
import type { PatternTraits } from './traits.ts';

type Direction = Pick<PatternTraits, 'direction' | 'up'>;

/**
 * Whether a print that runs along a line also has an up: shifted it is itself again, and turned by half it is not.
 *
 * Scales in rows, reeds and climbing leaves have shapes that face the same upside down or cancel each other out, and yet
 * stand. Stripes that run plain through the sheet do not: in what order their colours follow makes no up.
 * What is never itself again, strewn lenses or dashes each of another length, is not itself upside down either, whatever
 * its shapes are like: only of a print that repeats, both across and down, does that tell an up.
 *
 * Takes       the direction as outlines tell it, the maps of the print, and its likeness to itself, shift by shift.
 * Gives       the direction; a print that stands is about alike left and right, which tells the line of its up.
 */
export function standing(
  told: Direction,
  maps: readonly Grid[],
  likeness: Autocorrelation,
): Direction {
  if (told.direction !== 'two-way' || runsPlain(likeness) || !repeatsBothWays(likeness))
    return told;
  const seen = rich(maps).find((grid) => !isItselfTurned(grid, ITSELF));
  if (seen === undefined) return told;
  const stands = turnedLikeness(seen);
  return { direction: 'one-way', up: stands.leftRight() >= stands.upDown() ? 0 : 90 };
}

/**
 * A print upside down is itself when it is this like itself at some shift.
 *
 * Source      rendered prints, tuning seeds 1 to 10: scales, reeds, kelp and stems 0.23 to 0.47; fish both ways, zigzag and waves
 *             0.67 to 1.
 */
const ITSELF = 0.55;
/** Along a plain run a print stays this like itself, however far it is shifted. */
const PLAIN = 0.8;

function runsPlain({ across, down }: Autocorrelation): boolean {
  return [across, down].some((like) => like.every((value) => value > PLAIN));
}

/** The maps in which much is seen, the one with most first: upside down a print is itself only if all of them are. */
function rich(maps: readonly Grid[]): Grid[] {
  const seen = maps
    .map((grid) => ({ grid, variance: momentsOf(grid).variance }))
    .sort((p, q) => q.variance - p.variance);
  return seen
    .filter(({ variance }) => variance >= MUCH * seen[0]!.variance)
    .map(({ grid }) => grid);
}

/** Part of the variance of the richest map. A judgement. */
const MUCH = 0.25;
