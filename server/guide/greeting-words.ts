import type { Lab } from '../colour/lab.ts';
import { nameOf } from '../colour/names.ts';
import { bestGreetingInk } from '../supplies/best-ink.ts';
import type { GuideAsk } from './ask.ts';
import type { CardFacts, LayerFacts } from './facts.ts';

/** What to stamp the greeting with, of the inks that she has, and how well it will be read. */
export function greetingSaid({ supplies }: GuideAsk, card: CardFacts): string {
  const strip = card.layers.find(({ layer }) => layer.role === 'greeting');
  if (strip === undefined) return '';
  const ground = groundOf(strip);
  const sides = card.layers.flatMap(({ paper }) => (paper === null ? [] : [paper.side]));
  const best = ground === null ? undefined : bestGreetingInk(supplies, ground, sides)[0];
  if (best === undefined)
    return 'Stamp it in an ink much darker than the paper under it; black reads on any light paper.';
  const { ink, reads, match } = best;
  if (reads.verdict === 'cannot be read')
    return `None of your inks can be read on this strip. The best is ${ink.name}: ${reads.reason}`;
  const picks =
    match?.verdict === 'match' || match?.verdict === 'close'
      ? ` It picks up the ${nameOf(match.nearest.lab).words} of the papers.`
      : '';
  return `Stamp it in ${ink.name}.${picks} ${reads.reason}`;
}

function groundOf({ stock, paper }: LayerFacts): Lab | null {
  return stock?.lab ?? paper?.side.palette.colours[0]?.lab ?? null;
}
