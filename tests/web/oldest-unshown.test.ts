import { expect, test } from 'vitest';
import { oldestUnshown } from '../../web/plan/oldest-unshown.ts';

test('the oldest are dropped down to the bound, and none that is shown', () => {
  const kept = ['a', 'b', 'c', 'd', 'e'];
  expect(oldestUnshown(kept, 3, () => false)).toEqual(['a', 'b']);
  expect(oldestUnshown(kept, 3, (one) => one === 'a')).toEqual(['b', 'c']);
  expect(oldestUnshown(kept, 3, (one) => one !== 'e')).toEqual(['e']);
  expect(oldestUnshown(kept, 5, () => false)).toEqual([]);
});
