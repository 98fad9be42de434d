import type { Side } from '../../pad/pad.ts';
import type { Taste } from '../plan.ts';
import { createColourTable } from './look.ts';
import type { ColourTable, Look } from './look.ts';
import { combine, termsOf } from './pair-score.ts';
import type { Term } from './pair-score.ts';
import { lookOfSide } from './shown.ts';
import { GOES_WELL } from './goes-well.ts';
import { NO_TASTE } from './taste.ts';
import { statements } from './statements.ts';
import type { Called } from './statements.ts';

/** How two sides go together: the score in (0, 1], its terms, and the reasons in whole sentences: what ties two that
 *  go well first, else what speaks against them first. */
export interface Coordination {
  readonly score: number;
  readonly terms: readonly Term[];
  readonly words: readonly string[];
}

/** Two sides of a pad, by id. */
export interface PairOfSides extends Coordination {
  readonly a: string;
  readonly b: string;
}

/**
 * How well two sides go together when large pieces of them lie side by side on a card.
 *
 * Takes       two sides as read (palettes with shares and uncertainty, pattern traits); her taste.
 * Gives       a score in (0, 1], higher is better, without unit; symmetric; its terms in [0, 1]; sentences
 *             that call the two as `called` says.
 * Good up to  ranking papers for one card. It is no verdict on beauty: a fitted harmony of colours did
 *             not transfer between two collections that people made, so none is in it.
 * Source      the rules of the trade (shared colours, no near misses, grounds, contrast, mixed scales);
 *             every number stands in weights.ts with its origin.
 */
export function coordination(
  a: Side,
  b: Side,
  taste: Taste = NO_TASTE,
  called: Called = IN_ORDER,
): Coordination {
  const table = createColourTable();
  return between(wholeLook(a, table), wholeLook(b, table), table, taste, called);
}

/** All pairs of the sides given, best first: what goes with this? */
export function coordinationOf(sides: readonly Side[], taste: Taste = NO_TASTE): PairOfSides[] {
  const table = createColourTable();
  const looks = sides.map((side) => wholeLook(side, table));
  const pairs: PairOfSides[] = [];
  for (let at = 0; at < sides.length; at++) {
    for (let other = at + 1; other < sides.length; other++) {
      pairs.push({
        a: sides[at]!.id,
        b: sides[other]!.id,
        ...between(looks[at]!, looks[other]!, table, taste),
      });
    }
  }
  return pairs.sort((x, y) => y.score - x.score);
}

const IN_ORDER: Called = { a: 'the first paper', b: 'the second' };

function between(
  a: Look,
  b: Look,
  table: ColourTable,
  taste: Taste,
  called = IN_ORDER,
): Coordination {
  const terms = termsOf(a, b, table, taste, true);
  const score = combine(terms);
  const said = statements(a, b, table, terms, called);
  // A verdict of 'goes well' that begins with a flaw reads as if it contradicted itself.
  const inOrder =
    score < GOES_WELL ? said : said.toSorted((p, q) => Number(q.good) - Number(p.good));
  return { score, terms, words: inOrder.map(({ text }) => text) };
}

function wholeLook(side: Side, table: ColourTable): Look {
  const indices = side.palette.colours.map((colour) => table.add(colour));
  return lookOfSide(side.palette, side.pattern, indices, 1);
}
