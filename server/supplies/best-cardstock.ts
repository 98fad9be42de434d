import type { Side } from '../pad/pad.ts';
import { matchOf } from './match-of.ts';
import type { MatchVerdict } from './match-of.ts';
import type { Supply } from './supply.ts';

/** A cardstock of hers, and what it does under some papers. */
export interface RankedCardstock {
  readonly supply: Supply;
  /** picks up: it repeats a colour of the papers; quiet: a neutral that keeps them apart; odd: neither. */
  readonly use: 'picks up' | 'quiet' | 'odd';
  /** In [0, 1]. */
  readonly worth: number;
  /** Against each of the sides, in their order. */
  readonly matches: readonly MatchVerdict[];
}

/** Up to this chroma a solid passes as a quiet neutral. Common practice, no source. */
const NEUTRAL_CHROMA = 9;
const QUIET = 0.6;

/** What a verdict is worth under a paper: almost the same colour looks like a mistake. Common practice, no source. */
const WORTH: Readonly<Record<MatchVerdict['verdict'], number>> = {
  match: 1,
  'cannot tell': 0.65,
  close: 0.55,
  apart: 0.1,
};

/**
 * Her cardstock for the mats and bases of a card, the best first.
 *
 * Takes       her supplies, and the sides that lie on the card (at least one). Inks, and cardstock of
 *             which no sheet is left, are passed over.
 */
export function bestCardstock(
  supplies: readonly Supply[],
  sides: readonly Side[],
): RankedCardstock[] {
  return supplies
    .filter(({ kind, sheets }) => kind === 'cardstock' && sheets !== 0)
    .map((supply) => ranked(supply, sides))
    .sort((a, b) => b.worth - a.worth || (a.supply.id < b.supply.id ? -1 : 1));
}

function ranked(supply: Supply, sides: readonly Side[]): RankedCardstock {
  const matches = sides.map((side) => matchOf(supply, side));
  const shared =
    matches.reduce((sum, { verdict }) => sum + WORTH[verdict], 0) / Math.max(1, matches.length);
  const quiet = Math.hypot(supply.lab.a, supply.lab.b) <= NEUTRAL_CHROMA ? QUIET : 0;
  const worth = Math.max(shared, quiet);
  const use = shared >= quiet && shared >= WORTH.close ? 'picks up' : quiet > 0 ? 'quiet' : 'odd';
  return { supply, use, worth, matches };
}
