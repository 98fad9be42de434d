import type { GuideAsk } from './ask.ts';
import { cardPicture } from './card-picture.ts';
import { cardFactsOf } from './facts.ts';
import type { Paint } from './paint.ts';

/**
 * The picture of one card of a plan, as SVG: each layer shows the very place that its piece is cut from.
 *
 * Takes       what a guide is made from, and the number of the card in the batch.
 * Refuses     a number that no card has, and a plan that speaks of things no longer there.
 */
export function plannedCardPicture(ask: GuideAsk, number: number): string {
  const { layout, layers } = cardFactsOf(ask, number);
  const paints = new Map<string, Paint>(layers.map(({ layer, paint }) => [layer.id, paint]));
  return cardPicture(layout, (layer) => paints.get(layer)!);
}
