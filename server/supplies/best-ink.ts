import type { Lab } from '../colour/lab.ts';
import type { PaletteColour } from '../colour/palette.ts';
import type { Side } from '../pad/pad.ts';
import { inkOnPaper } from './ink-on-paper.ts';
import { legibility } from './legibility.ts';
import type { Legibility } from './legibility.ts';
import { matchOf } from './match-of.ts';
import type { MatchVerdict } from './match-of.ts';
import type { Supply } from './supply.ts';

export interface RankedInk {
  readonly ink: Supply;
  /** The colour that it is expected to have on the strip. */
  readonly printed: Lab;
  readonly reads: Legibility;
  /** The best of its matches with the papers of the card; null where there are none. */
  readonly match: MatchVerdict | null;
}

const READS: readonly Legibility['verdict'][] = [
  'cannot be read',
  'large letters only',
  'small letters',
];
const MATCHES: readonly MatchVerdict['verdict'][] = ['apart', 'cannot tell', 'close', 'match'];

/**
 * Her inks for a greeting, the best first: what can be read comes before what cannot; among inks that
 * read alike the one that picks up a colour of the card's papers, then the one of higher contrast.
 *
 * Takes       her supplies, the colour of the strip, and the sides that lie on the card (may be none).
 */
export function bestGreetingInk(
  supplies: readonly Supply[],
  strip: Lab,
  sides: readonly Side[],
): RankedInk[] {
  return inksOf(supplies)
    .map((ink): RankedInk => {
      const printed = inkOnPaper(ink.lab, strip).lab;
      const matches = sides.map((side) => matchOf(ink, side));
      return { ink, printed, reads: legibility(printed, strip), match: nearest(matches) };
    })
    .sort(
      (a, b) =>
        READS.indexOf(b.reads.verdict) - READS.indexOf(a.reads.verdict) ||
        rank(b.match) - rank(a.match) ||
        b.reads.contrast - a.reads.contrast,
    );
}

export interface AccentInk {
  readonly accent: PaletteColour;
  /** The nearest ink of hers with its verdict; null when she has no ink. */
  readonly best: { readonly ink: Supply; readonly match: MatchVerdict } | null;
}

/** For each accent of a side, largest share first, or for the one colour asked of, the nearest of her inks. */
export function inksForAccents(
  supplies: readonly Supply[],
  side: Side,
  colour?: number,
): AccentInk[] {
  const inks = inksOf(supplies);
  return side.palette.colours
    .map((accent, place) => ({ accent, place }))
    .filter(({ accent, place }) =>
      colour === undefined ? accent.role === 'accent' : place === colour,
    )
    .map(({ accent, place }) => {
      const best = inks
        .map((ink) => ({ ink, match: matchOf(ink, side, place) }))
        .reduce<AccentInk['best']>(
          (best, one) => (best === null || isNearer(one, best) ? one : best),
          null,
        );
      return { accent, best };
    });
}

/** What a shining smear measures is no colour: it comes after all others. */
function isNearer(one: NonNullable<AccentInk['best']>, best: typeof one): boolean {
  const [shines, shone] = [one.ink.glossy === true, best.ink.glossy === true];
  return shines === shone ? one.match.difference < best.match.difference : shone;
}

function inksOf(supplies: readonly Supply[]): Supply[] {
  return supplies.filter(({ kind, sheets }) => kind === 'ink' && sheets !== 0);
}

function nearest(matches: readonly MatchVerdict[]): MatchVerdict | null {
  return matches.reduce<MatchVerdict | null>(
    (best, one) => (best === null || one.difference < best.difference ? one : best),
    null,
  );
}

function rank(match: MatchVerdict | null): number {
  return match === null ? -1 : MATCHES.indexOf(match.verdict);
}
