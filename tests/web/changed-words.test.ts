import { expect, test } from 'vitest';
import { changedBySheets } from '../../web/plan/changed-cards.ts';
import { planWords } from '../../web/words/plan.ts';
import type { Plan } from '../../server/contract/plans.ts';

const { said } = planWords.changed;
const changed = (cards: number[], too: number[], bySheets = false) => ({ cards, too, bySheets });

test('of cards left as they lay it is said which they are, and which changed besides hers', () => {
  expect(said(changed([1], []), [5])).toBe(
    'Card 1 changed. Chosen all anew, card 5 would go a little better with other papers.',
  );
  expect(said(changed([1, 3], [3]), [5, 6, 7])).toBe(
    'Card 1 changed, card 3 too. Chosen all anew, cards 5 to 7 would go a little better with other papers.',
  );
  expect(said(changed([], []), [2, 4])).toMatch(
    /^No card changed\. Chosen all anew, cards 2, 4 would go/,
  );
  expect(said(changed([1, 2], [2]), [])).toBe('Card 2 changed too, so that all goes together.');
  expect(said(changed([1, 2], [2], true), [])).toBe(
    'Card 2 changed too: pieces of the same sheets lie on it.',
  );
});

test('cards had to change where one sheet came into the place of another, and they are cut from it', () => {
  const cutFrom = (...sheets: [sheet: string, cards: number[]][]): Plan =>
    ({
      sheetsUsed: sheets.map(([sheet, cards], at) => ({ slot: `slot-${at}`, sheet, cards })),
    }) as unknown as Plan;
  const before = cutFrom(['a', [1, 2]], ['b', [2, 3]], ['c', [4]]);
  const over = cutFrom(['b', [1, 2]], ['a', [2, 3]], ['c', [4]]);
  expect(changedBySheets(before, over, [2, 3])).toBe(true);
  expect(changedBySheets(before, over, [2, 4])).toBe(false);
  const all = cutFrom(['b', [1, 2]], ['c', [2, 3]], ['a', [4]]);
  expect(changedBySheets(before, all, [2, 4])).toBe(false);
});

test('that a pull keeps both papers is said before it, and of which cuts a proof speaks beside other numbers of sheets', () => {
  expect(planWords.pull.hint).toMatch(/Both are then kept where you put them/);
  expect(planWords.else.amountLead).toMatch(/fewest sheets holds for the cuts of its guide/);
});
