import type { Side } from '../pad/pad.ts';
import { hardlyToldApart } from './alike.ts';
import { matchOf } from './match-of.ts';
import type { MatchVerdict } from './match-of.ts';
import type { Supply } from './supply.ts';

/** A cardstock of hers, and what it does under some papers. */
export interface RankedCardstock {
  readonly supply: Supply;
  /**
   * picks up: it repeats a colour of the papers; unsure: the photo cannot tell whether it does; quiet: a neutral that
   * keeps them apart; odd: none of these. Told by `match`, as wherever the two are compared.
   */
  readonly use: 'picks up' | 'unsure' | 'quiet' | 'odd';
  /** In [0, 1]. */
  readonly worth: number;
  /** The best of its matches with the sides: what its use and its reason rest on. */
  readonly match: MatchVerdict;
  /** Others of hers that can hardly be told from it: they take no place of their own. */
  readonly alike: readonly Supply[];
}

/** Up to this chroma a solid passes as a quiet neutral. Common practice, no source. */
const NEUTRAL_CHROMA = 9;
const QUIET = 0.6;

/** What a verdict is worth under a paper: almost the same colour looks like a mistake. Common practice, no source. */
const WORTH: Readonly<Record<MatchVerdict['verdict'], number>> = {
  match: 1,
  close: 0.55,
  'cannot tell': 0.5,
  apart: 0.1,
};

/**
 * Her cardstock for the mats and bases of a card, the best first: each that picks up a colour which none before it
 * does, then those for a colour that has one already. Of equal worth is first what picks up more of the papers.
 *
 * Takes       her supplies, and the sides that lie on the card (at least one). Inks, and cardstock of
 *             which no sheet is left, are passed over. With `colour`, a place in the palette of each
 *             side, only that colour counts, and none passes as quiet.
 */
export function bestCardstock(
  supplies: readonly Supply[],
  sides: readonly Side[],
  colour?: number,
): RankedCardstock[] {
  const all = supplies
    .filter(({ kind, sheets }) => kind === 'cardstock' && sheets !== 0)
    .map((supply) => ranked(supply, sides, colour))
    .sort(
      (a, b) =>
        b.worth - a.worth ||
        b.match.nearest.share - a.match.nearest.share ||
        a.match.difference - b.match.difference ||
        (a.supply.id < b.supply.id ? -1 : 1),
    );
  return colourByColour(onePlaceEach(all));
}

function ranked(supply: Supply, sides: readonly Side[], colour?: number): RankedCardstock {
  const matches = sides.map((side) => matchOf(supply, side, colour));
  const shared =
    matches.reduce((sum, { verdict }) => sum + WORTH[verdict], 0) / Math.max(1, matches.length);
  const isNeutral = Math.hypot(supply.lab.a, supply.lab.b) <= NEUTRAL_CHROMA;
  const quiet = isNeutral && colour === undefined ? QUIET : 0;
  const match = matches.reduce((best, one) => (isBetter(one, best) ? one : best));
  const use = shared < quiet ? 'quiet' : shared < WORTH['cannot tell'] ? 'odd' : useOf(match);
  return { supply, use, worth: Math.max(shared, quiet), match, alike: [] };
}

function isBetter(one: MatchVerdict, other: MatchVerdict): boolean {
  const more = WORTH[one.verdict] - WORTH[other.verdict];
  return more > 0 || (more === 0 && one.difference < other.difference);
}

function useOf({ verdict }: MatchVerdict): RankedCardstock['use'] {
  if (verdict === 'apart') return 'odd';
  return verdict === 'cannot tell' ? 'unsure' : 'picks up';
}

/** One place for all that can hardly be told apart, the best of them in it. */
function onePlaceEach(all: readonly RankedCardstock[]): RankedCardstock[] {
  const placed: RankedCardstock[] = [];
  for (const one of all) {
    const at = placed.findIndex(({ supply }) => hardlyToldApart(supply, one.supply));
    if (at < 0) placed.push(one);
    else placed[at] = { ...placed[at]!, alike: [...placed[at]!.alike, one.supply] };
  }
  return placed;
}

/** The second for one colour of the papers comes after the first for every other, as long as both pick one up. */
function colourByColour(all: readonly RankedCardstock[]): RankedCardstock[] {
  const met = new Set<MatchVerdict['nearest']>();
  const [first, again]: [RankedCardstock[], RankedCardstock[]] = [[], []];
  for (const one of all.filter(({ use }) => use !== 'odd')) {
    const known = one.use !== 'quiet' && met.has(one.match.nearest);
    (known ? again : first).push(one);
    if (one.use !== 'quiet') met.add(one.match.nearest);
  }
  return [...first, ...again, ...all.filter(({ use }) => use === 'odd')];
}
