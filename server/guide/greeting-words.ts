import type { Lab } from '../colour/lab.ts';
import { nameOf } from '../colour/names.ts';
import { bestGreetingInk } from '../supplies/best-ink.ts';
import type { RankedInk } from '../supplies/best-ink.ts';
import type { Supply } from '../supplies/supply.ts';
import { readsInBlack } from '../supplies/what-is-missing.ts';
import type { GuideAsk } from './ask.ts';
import type { CardFacts, LayerFacts } from './facts.ts';

/** The best of her inks for the greeting of a card; null where none can be read on its strip, or it has no greeting. */
export function greetingInk(
  { supplies }: Pick<GuideAsk, 'supplies'>,
  card: CardFacts,
): Supply | null {
  const strip = stripOf(card);
  const best = strip === undefined ? undefined : bestOn(supplies, card, groundOf(strip));
  return best === undefined || best.reads.verdict === 'cannot be read' ? null : best.ink;
}

function stripOf({ layers }: CardFacts): LayerFacts | undefined {
  return layers.find(({ layer }) => layer.role === 'greeting');
}

function bestOn(
  supplies: readonly Supply[],
  { layers }: CardFacts,
  ground: Lab | null,
): RankedInk | undefined {
  const sides = layers.flatMap(({ paper }) => (paper === null ? [] : [paper.side]));
  return ground === null ? undefined : bestGreetingInk(supplies, ground, sides)[0];
}

/** What to stamp the greeting with, of the inks that she has, and how well it will be read. */
export function greetingSaid({ supplies }: GuideAsk, card: CardFacts): string {
  const strip = stripOf(card);
  if (strip === undefined) return '';
  const ground = groundOf(strip);
  const best = bestOn(supplies, card, ground);
  const black = ground !== null && readsInBlack(ground);
  if (best === undefined)
    return black
      ? 'Stamp it in black ink, which is on the shopping list, or in another that is much darker than the paper under it.'
      : TOO_DARK;
  const { ink, reads, match } = best;
  if (reads.verdict === 'cannot be read')
    return `None of your inks can be read on this strip. The best is ${ink.name}: ${reads.reason}${black ? ' Black ink is on the shopping list.' : ''}`;
  const picks =
    match?.verdict === 'match' || match?.verdict === 'close'
      ? ` It picks up the ${nameOf(match.nearest.lab).words} of the papers.`
      : '';
  return `Stamp it in ${ink.name}.${picks} ${reads.reason}`;
}

const TOO_DARK =
  'This strip is too dark to be read on in any ink, even in black: stamp on lighter cardstock instead.';

function groundOf({ stock, paper }: LayerFacts): Lab | null {
  return stock?.lab ?? paper?.side.palette.colours[0]?.lab ?? null;
}
