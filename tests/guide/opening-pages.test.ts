import { describe, expect, test } from 'vitest';
import { factsOf } from '../../server/guide/facts.ts';
import { guidePages } from '../../server/guide/guide-pages.ts';
import { leftBlock } from '../../server/guide/left-blocks.ts';
import { stockNeeds } from '../../server/guide/stock-needs.ts';
import { textOf } from './flat.ts';
import { guideWorld, layoutsOf } from './world.ts';

const HEADS = [
  'Which sheet goes to which card',
  'Hot tools and powders',
  'What it takes',
  'Cutting list',
  'Cardstock by colour',
] as const;

describe.each([1, 3, 5, 9, 14, 24])('a guide for %d cards', (count) => {
  const ask = guideWorld(layoutsOf('us').slice(0, count));
  const pages = guidePages(ask);
  const heads = pages.map(({ marks }) => textOf(marks));

  test('has the table of sheets, the cautions and each list once, in this order, before the first cut', () => {
    // The name of a page is its first words, and may be that of its list.
    const places = HEADS.map((head) =>
      heads.flatMap((texts, page) =>
        texts.slice(1).flatMap((text, at) => (text === head ? [1000 * page + at] : [])),
      ),
    );
    const cut = pages.findIndex(({ name }) => name.startsWith('Cut the papers'));
    expect(cut).toBeGreaterThan(0);
    for (const [at, found] of places.entries()) {
      const wide = HEADS[at] === 'Which sheet goes to which card' && count > 18;
      expect(found, HEADS[at]).toHaveLength(wide ? 0 : 1);
    }
    // The table stands under the numbers of the sheets or under the cautions.
    const [table, ...others] = places;
    const order = others.flat();
    for (const one of table!) expect(one).toBeLessThan(order[1]!);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(order.at(-1)).toBeLessThan(1000 * cut);
  });

  test('says once what is left over, where it takes no page of its own but in need', () => {
    const at = heads.flatMap((texts, page) => (texts.includes('Left over, to keep') ? [page] : []));
    const facts = factsOf(ask);
    const left = leftBlock(ask, facts, stockNeeds(ask, facts));
    expect(at).toHaveLength(left === null ? 0 : 1);
    for (const page of at) expect(pages[page]!.name.toLowerCase()).toContain('what is left');
  });
});
