import type { LayoutListing } from '../../server/contract/layouts.ts';
import { millimetres } from '../lengths/lengths.ts';
import { cardsWords } from '../words/cards.ts';

/** The layouts of one size of card, upright and lying. */
export interface CardSize {
  readonly key: string;
  readonly name: string;
  readonly metric: boolean;
  readonly layouts: readonly LayoutListing[];
}

/** The layouts by the size of the finished card, each size once whichever way the card stands. */
export function cardSizesOf(layouts: readonly LayoutListing[]): CardSize[] {
  const sizes = new Map<string, LayoutListing[]>();
  for (const layout of layouts) {
    const key = sidesOf(layout).join(' × ');
    sizes.set(key, [...(sizes.get(key) ?? []), layout]);
  }
  return [...sizes].map(([key, some]) => ({
    key,
    name: nameOf(some[0]!),
    metric: !some[0]!.card.width.endsWith('in'),
    // Her own stand before ours.
    layouts: [...some].sort((a, b) => Number(b.origin === 'hers') - Number(a.origin === 'hers')),
  }));
}

function sidesOf({ card }: LayoutListing): string[] {
  return [card.width, card.height].sort((a, b) => (millimetres(a) ?? 0) - (millimetres(b) ?? 0));
}

/** A6 by its name (ISO 216), every other size by its sides in the unit in which it is cut. */
function nameOf(layout: LayoutListing): string {
  const [short, long] = sidesOf(layout) as [string, string];
  if (millimetres(short) === 105 && millimetres(long) === 148) return cardsWords.a6;
  const unit = short.replace(/^.*\s/, '');
  return `${short.replace(/\s\w+$/, '')} × ${long.replace(/\s\w+$/, '')} ${unit}`;
}
