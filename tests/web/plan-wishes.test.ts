import { describe, expect, test } from 'vitest';
import type { Pad } from '../../server/contract/pads.ts';
import type { Plan } from '../../server/contract/plans.ts';
import { asFew } from '../../web/plan/as-few.ts';
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

describe('a wish with as few changes as can be', () => {
  const cut = (sheets: readonly string[], pins: readonly object[] = []): Plan =>
    ({
      asked: { pins },
      cards: sheets.map((sheet, at) => ({ number: at + 1, layers: [{ layer: 'panel', sheet }] })),
      sheetsUsed: sheets.map((sheet, at) => ({ slot: `s${at + 1}`, sheet, cards: [at + 1] })),
    }) as unknown as Plan;
  const pad = (copies: number): Pad =>
    ({ sheets: ['a', 'b', 'c', 'd', 'e'].map((id) => ({ id, copies })) }) as unknown as Pad;
  const before = cut(['a', 'b', 'c', 'd']);
  const pinned = [{ card: 1, layer: 'panel', side: 'cf' }];
  const after = cut(['c', 'd', 'e', 'b'], pinned);

  test('changes over the two sheets that she speaks of, and leaves all others where they were', () => {
    expect(asFew(before, after, pad(1))).toEqual({ s1: 'c', s2: 'b', s3: 'a', s4: 'd' });
  });

  test('takes another copy where there is one, and then changes one sheet', () => {
    expect(asFew(before, after, pad(2))).toEqual({ s1: 'c', s2: 'b', s3: 'c', s4: 'd' });
  });

  test('is not offered where it would change no fewer cards, or where the cards are cut another way', () => {
    expect(asFew(before, cut(['c', 'b', 'a', 'd'], pinned), pad(1))).toBeNull();
    expect(asFew(before, cut(['c', 'd'], pinned), pad(1))).toBeNull();
  });
});
