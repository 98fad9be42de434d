import { expect, test } from 'vitest';
import { heldNow } from '../../web/table/held.ts';

const nothing = { about: null, value: null };

test('what stood last stays until the next about the same is here', () => {
  const first = heldNow(nothing, 'plan 1', 'one person');
  expect(heldNow(first, 'plan 1', null)).toBe(first);
  expect(heldNow(first, 'plan 1', 'two people')).toEqual({ about: 'plan 1', value: 'two people' });
});

test('what stood about something else goes at once', () => {
  const first = heldNow(nothing, 'plan 1', 'one person');
  expect(heldNow(first, 'plan 2', null)).toEqual({ about: 'plan 2', value: null });
});

test('where it is about nothing in particular nothing is held', () => {
  expect(heldNow(heldNow(nothing, null, 'here'), null, null).value).toBeNull();
});
