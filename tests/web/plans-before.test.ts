import { describe, expect, test } from 'vitest';
import type { PlanSummary } from '../../server/contract/plans.ts';
import { plansBefore, spread } from '../../web/plan/plans-before.ts';

/** Plans in the order of their making, as `id`, `from`, `choice`, and how many steps are ticked off. */
function plans(...told: readonly (readonly [string, string | null, string, number?])[]) {
  return told.map(([id, from, choice, ticks = 0]): PlanSummary => ({
    id,
    from,
    choice,
    ticks,
    pad: 'pad',
    cards: 3,
    value: 2,
    createdAt: '2026-05-04T03:02:01.000Z',
  }));
}

const ids = (all: readonly PlanSummary[]): string[] => all.map(({ id }) => id);

describe('the plans worth going back to', () => {
  test('of a choice of cards the last plan, the newest choice first', () => {
    const all = plans(['a', null, 'a'], ['b', 'a', 'a'], ['c', 'b', 'c'], ['d', 'c', 'c']);
    expect(ids(plansBefore(all, 'd'))).toEqual(['d', 'b']);
  });

  test('where she had gone back, the plan that she left for the next choice, not the one she had undone', () => {
    const all = plans(['a', null, 'a'], ['b', 'a', 'a'], ['c', 'a', 'c']);
    expect(ids(plansBefore(all, 'c'))).toEqual(['c', 'a']);
  });

  test('every plan that is begun to be cut, and the one on the table', () => {
    const all = plans(['a', null, 'a', 4], ['b', 'a', 'a'], ['c', 'b', 'a'], ['d', 'c', 'd']);
    expect(ids(plansBefore(all, 'd'))).toEqual(['d', 'c', 'a']);
    expect(ids(plansBefore(all, 'b'))).toEqual(['d', 'b', 'a']);
  });

  test('one whose ticks went on with a change of it is not shown beside that one', () => {
    const all = plans(['a', null, 'a', 2], ['b', 'a', 'a', 3], ['c', 'b', 'c']);
    expect(ids(plansBefore(all, 'c'))).toEqual(['c', 'b']);
  });

  test('pictures are of cards spread over all of them', () => {
    expect(spread(15, 4)).toEqual([1, 4, 8, 12]);
    expect(spread(2, 4)).toEqual([1, 2]);
  });
});
