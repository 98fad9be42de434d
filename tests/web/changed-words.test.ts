import { expect, test } from 'vitest';
import { planWords } from '../../web/words/plan.ts';

const { said } = planWords.changed;

test('of cards left as they lay it is said which they are, and which changed besides hers', () => {
  expect(said([1], [], [5])).toBe(
    'Card 1 changed. Chosen all anew, card 5 would go a little better with other papers.',
  );
  expect(said([1, 3], [3], [5, 6, 7])).toBe(
    'Card 1 changed, card 3 too. Chosen all anew, cards 5 to 7 would go a little better with other papers.',
  );
  expect(said([], [], [2, 4])).toMatch(/^No card changed\. Chosen all anew, cards 2, 4 would go/);
  expect(said([1, 2], [2], [])).toBe('Card 2 changed too, so that all goes together.');
});
