import { expect, test } from 'vitest';
import type { Pad } from '../../server/contract/pads.ts';
import type { Plan } from '../../server/contract/plans.ts';
import { changedCards, pinnedAnew } from '../../web/plan/changed-cards.ts';
import { keepsAsItLies, pinsInWay } from '../../web/plan/wishes.ts';
import { hindering } from '../../web/plan/swap-papers.ts';
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

test('a wish that keeps what lies there leaves a plan as it is, unless it is cut anew or a better one is known', () => {
  const plan = { ...planOf('a', 'b'), asked: {} } as Plan;
  const pins = [{ card: 1, layer: 'panel', side: 'a' }];
  const seen = { cards: [] };
  expect(keepsAsItLies(plan, seen, { pins })).toBe(true);
  expect(keepsAsItLies(plan, seen, { pins: [{ ...pins[0]!, side: 'b' }] })).toBe(false);
  expect(keepsAsItLies(plan, { ...seen, pins }, { pins: [] })).toBe(false);
  expect(keepsAsItLies({ ...plan, asked: { ...plan.asked, sheets: 4 } }, seen, { pins })).toBe(
    false,
  );
  const otherwise = { slots: {}, gain: 1, cards: [2] };
  expect(keepsAsItLies({ ...plan, otherwise }, seen, { pins })).toBe(false);
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

test('of a refusal the older pins are found that are in the way of those wished last', () => {
  const [old, other, put] = [
    { card: 1, layer: 'band', side: 's2f' },
    { card: 4, layer: 'band', side: 's3f' },
    { card: 3, layer: 'outer', side: 's2b' },
  ];
  const problem = { type: '', title: '', status: 409, detail: '', field: 'pins' };
  const named = { ...problem, received: [old, put] };
  expect(pinsInWay(named, [old, other], [put])).toEqual([old]);
  expect(pinsInWay(named, [old, other], [])).toEqual([]);
  expect(pinsInWay({ ...named, status: 404 }, [old], [put])).toEqual([]);
  expect(pinsInWay(null, [old], [put])).toEqual([]);
});

test('a pin that keeps the one copy of a sheet in other pieces hinders a pull', () => {
  const layer = (id: string, sheet: string, side: string): object => ({ layer: id, sheet, side });
  const plan = {
    asked: {},
    cards: [
      { number: 1, layers: [layer('band', 's2', 's2f')] },
      { number: 2, layers: [layer('band', 's2', 's2b')] },
      { number: 3, layers: [layer('outer', 's12', 's12f')] },
    ],
    sheetsUsed: [
      { slot: 'A', sheet: 's2', cards: [1, 2] },
      { slot: 'B', sheet: 's12', cards: [3] },
    ],
  } as unknown as Plan;
  const pin = { card: 1, layer: 'band', side: 's2f' };
  const [from, to] = [
    { card: 2, layer: 'band' },
    { card: 3, layer: 'outer' },
  ];
  expect(hindering(plan, [pin], from, to, () => 1)).toEqual([pin]);
  expect(hindering(plan, [pin], from, to, () => 2)).toEqual([]);
  expect(hindering(plan, [], from, to, () => 1)).toEqual([]);
});
