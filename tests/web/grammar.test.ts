import { expect, test } from 'vitest';
import { cardsNamed } from '../../web/words/grammar.ts';

test.each([
  [[4], 'card 4'],
  [[2, 3], 'cards 2, 3'],
  [[1, 2, 3], 'cards 1 to 3'],
  [[7, 3, 4, 5, 9, 10], 'cards 3 to 5, 7, 9, 10'],
])('%j are told as %s', (cards, said) => {
  expect(cardsNamed(cards)).toBe(said);
});
