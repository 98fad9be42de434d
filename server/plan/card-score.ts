import type { Layer } from '../layouts/layout.ts';
import type { ColourTable, Look } from './coordination/look.ts';
import { readable } from './coordination/greeting.ts';
import { pairScore } from './coordination/pair-score.ts';
import type { CardLinks, Link } from './links.ts';
import type { Taste } from './plan.ts';
import { LYING, SAME_PAPER, WANTED_DISCOUNT } from './weights.ts';

/** What one layer shows once it is chosen. */
export interface Shown {
  readonly look: Look;
  /** Side id of a paper; null for cardstock. */
  readonly side: string | null;
  /** A print with an up. */
  readonly up: boolean;
  /** Such a print that would lie on its side. */
  readonly lying: boolean;
  /** A cardstock that she would have to buy. */
  readonly wanted: boolean;
}

/** What one link is worth in [0, 1], given the score of the two looks. */
export function linkWorth(a: Shown, b: Shown, score: number): number {
  if (a.side !== null && a.side === b.side) return SAME_PAPER;
  return score * discount(a) * discount(b);
}

function discount(shown: Shown): number {
  return (shown.lying ? LYING : 1) * (shown.wanted ? 1 - WANTED_DISCOUNT : 1);
}

export interface JudgedLink {
  readonly link: Link;
  readonly worth: number;
}

/**
 * The score of a fully chosen card, in [0, 1]: its links and greetings by their weights. This is the
 * definition; the solver's tables must come to the same.
 */
export function scoreCard(
  card: CardLinks,
  shown: (layer: Layer) => Shown,
  table: ColourTable,
  taste: Taste,
): { readonly score: number; readonly links: readonly JudgedLink[] } {
  if (card.total === 0) return { score: 1, links: [] };
  let sum = 0;
  const links = card.links.map((link): JudgedLink => {
    const a = shown(link.a);
    const b = shown(link.b);
    const worth = linkWorth(a, b, pairScore(a.look, b.look, table, taste, link.touching));
    sum += link.weight * worth;
    return { link, worth };
  });
  for (const greeting of card.greetings)
    sum += greeting.weight * readable(shown(greeting.layer).look);
  return { score: sum / card.total, links };
}
