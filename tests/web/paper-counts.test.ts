import { expect, test } from 'vitest';
import { paperCountsOf, withPapers } from '../../web/cards/paper-counts.ts';

const layouts = [
  { id: 'a', papers: 3 },
  { id: 'b', papers: 1 },
  { id: 'c', papers: 3 },
];

test('numbers of papers stand once each, fewest first', () => {
  expect(paperCountsOf(layouts)).toEqual([1, 3]);
});

test('only those with so many papers are shown, and the one kept just now', () => {
  expect(withPapers(layouts, 3, null).map(({ id }) => id)).toEqual(['a', 'c']);
  expect(withPapers(layouts, 3, 'b').map(({ id }) => id)).toEqual(['a', 'b', 'c']);
});

test('where no layout takes so many, as on another size of card, all are shown', () => {
  expect(withPapers(layouts, 4, null)).toEqual(layouts);
  expect(withPapers(layouts, null, null)).toEqual(layouts);
});
