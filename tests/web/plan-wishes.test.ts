import { expect, test } from 'vitest';
import type { Pad } from '../../server/contract/pads.ts';
import type { Plan } from '../../server/contract/plans.ts';
import { changedCards, pinnedAnew } from '../../web/plan/changed-cards.ts';
import { pinsOnSheet } from '../../web/plan/pins-on-sheet.ts';

function planOf(...sides: string[]): Plan {
  const cards = sides.map((side, at) => ({ number: at + 1, layers: [{ layer: 'panel', side }] }));
  return { cards } as unknown as Plan;
}

test('cards that lie on other papers than before are told by their numbers', () => {
  expect(changedCards(planOf('a', 'b', 'c'), planOf('a', 'c', 'b'))).toEqual([2, 3]);
  expect(changedCards(planOf('a'), planOf('a'))).toEqual([]);
});

test('the cards that she changed are those whose pins came, went or are another', () => {
  const pin = (card: number, side: string): { card: number; layer: string; side: string } => ({
    card,
    layer: 'panel',
    side,
  });
  expect(pinnedAnew([pin(1, 'a'), pin(2, 'b')], [pin(2, 'c'), pin(1, 'a')])).toEqual([2]);
  expect(pinnedAnew(undefined, [pin(4, 'a'), pin(5, 'b')])).toEqual([4, 5]);
  expect(pinnedAnew([pin(3, 'a')], [])).toEqual([3]);
});

test('a sheet is kept by a pin of it and by a pin of either of its sides', () => {
  const pad = {
    sheets: [
      { id: 's1', front: { id: 's1f' }, back: { id: 's1b' } },
      { id: 's2', front: { id: 's2f' }, back: null },
    ],
  } as unknown as Pad;
  const pins = [
    { card: 1, layer: 'panel', side: 's1b' },
    { card: 2, layer: 'panel', side: 's2f' },
    { card: 3, layer: 'panel', sheet: 's1' },
    { card: 4, layer: 'mat', supply: 's1' },
  ];
  expect(pinsOnSheet(pad, pins, 's1').map(({ card }) => card)).toEqual([1, 3]);
});
