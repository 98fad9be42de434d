import { expect, test } from 'vitest';
import { verdictOf } from '../../server/http/wire/plan-verdict.ts';

const cards = Array.from({ length: 10 });

test('a plan that is proven best is called so, and no gap is named', () => {
  expect(verdictOf({ proven: true, value: 9, bound: 9, cards }, false)).toMatch(/^Proven best/);
});

test.each([
  [0.97, 1, 4], // 3.09 % of what the plan is worth
  [5, 10, 100],
  [10, 10.05, 1],
])('a plan of %d under a bound of %d: another is at most %i %% better', (value, bound, gap) => {
  expect(verdictOf({ proven: false, value, bound, cards }, false)).toContain(
    `at most ${gap} % better`,
  );
  expect(value * (1 + gap / 100)).toBeGreaterThanOrEqual(bound - 1e-9);
});

test('a plan with pins is judged among those that keep them, and says so', () => {
  const given = { value: 9, bound: 9, cards };
  for (const proven of [true, false]) {
    expect(verdictOf({ proven, ...given }, true)).toContain('with what you kept');
    expect(verdictOf({ proven, ...given }, false)).not.toContain('kept');
  }
});

test('cards left as they lay: 1 of 100 at most is said only where the bound allows no more', () => {
  const left = {
    proven: false,
    value: 9,
    otherwise: { slots: {}, value: 9.05, cards: [2] },
    cards,
  };
  expect(verdictOf({ ...left, bound: 9.1 }, true)).toContain('by 1 of 100 at most');
  const open = verdictOf({ ...left, bound: 9.4 }, true);
  expect(open).not.toContain('1 of 100');
  // 0.4 of 9 is 4.4 %.
  expect(open).toContain('at most 5 % better');
});
