import { legibility } from '../supplies/legibility.ts';
import { inkOnPaper } from '../supplies/ink-on-paper.ts';
import type { Lab } from '../colour/lab.ts';
import type { GuideAsk } from './ask.ts';
import type { CardFacts, LayerFacts } from './facts.ts';

/** What to stamp the greeting with, of the inks that she has, and how well it will be read. */
export function greetingSaid({ supplies }: GuideAsk, card: CardFacts): string {
  const strip = card.layers.find(({ layer }) => layer.role === 'greeting');
  if (strip === undefined) return '';
  const ground = groundOf(strip);
  const inks = supplies.filter(({ kind, sheets }) => kind === 'ink' && sheets !== 0);
  if (ground === null || inks.length === 0)
    return 'Stamp it in an ink much darker than the strip; black reads on any light strip.';
  const judged = inks
    .map((ink) => ({ ink, read: legibility(inkOnPaper(ink.lab, ground).lab, ground) }))
    .sort((a, b) => b.read.contrast - a.read.contrast);
  const { ink, read } = judged[0]!;
  if (read.verdict === 'cannot be read')
    return `None of your inks can be read on this strip: ${read.reason}`;
  return `Stamp it in ${ink.name}. ${read.reason}`;
}

function groundOf({ stock, paper }: LayerFacts): Lab | null {
  return stock?.lab ?? paper?.side.palette.colours[0]?.lab ?? null;
}
