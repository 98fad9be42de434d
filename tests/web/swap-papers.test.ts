import { expect, test } from 'vitest';
import type { PlannedCard } from '../../server/contract/plans.ts';
import { sameSpot, swapped, whyNot } from '../../web/plan/swap-papers.ts';
import type { Spot } from '../../web/plan/swap-papers.ts';

/** Two cards of one panel and a plain greeting each. */
const cards = [1, 2].map((number) => ({
  number,
  layers: [
    { layer: 'panel', side: `side-${number}`, sheet: `sheet-${number}` },
    { layer: 'greeting', supply: 'shell' },
  ],
})) as unknown as PlannedCard[];
const panel = (card: number): Spot => ({ card, layer: 'panel' });
const greeting = (card: number): Spot => ({ card, layer: null, plain: 'Greeting' });

test('two papers change over, each kept where the other lay', () => {
  expect(whyNot(cards, panel(1), panel(2))).toBeNull();
  expect(swapped([], cards, panel(1), panel(2))).toEqual([
    { card: 1, layer: 'panel', side: 'side-2' },
    { card: 2, layer: 'panel', side: 'side-1' },
  ]);
});

test('a paper over plain cardstock, and cardstock that is pulled, are told what can be done', () => {
  expect(whyNot(cards, panel(1), greeting(2))).toBe(
    'Greeting: plain cardstock. Let go over a patterned paper',
  );
  expect(whyNot(cards, greeting(1), panel(2))).toBe(
    'Greeting: plain cardstock. Touch the card to choose another',
  );
  expect(swapped([], cards, panel(1), greeting(2))).toBeNull();
  expect(swapped([], cards, greeting(1), panel(2))).toBeNull();
  expect(whyNot(cards, panel(1), { card: 2, layer: null })).toBe('No patterned paper lies there');
});

test('from one plain layer to the next of a card is another spot, so that its words change', () => {
  expect(sameSpot(greeting(1), { ...greeting(1), plain: 'Base' })).toBe(false);
  expect(sameSpot(greeting(1), greeting(1))).toBe(true);
});
