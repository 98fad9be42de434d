import { describe, expect, test } from 'vitest';
import type { GuideAsk } from '../../server/guide/ask.ts';
import { factsOf } from '../../server/guide/facts.ts';
import { guidePages } from '../../server/guide/guide-pages.ts';
import { likePaper } from '../../server/guide/like-paper.ts';
import { stockNeeds } from '../../server/guide/stock-needs.ts';
import { whatItTakes } from '../../server/guide/what-it-takes.ts';
import type { Supply } from '../../server/supplies/supply.ts';
import { textOf } from './flat.ts';
import { guideWorld, layoutsOf } from './world.ts';

const world = guideWorld(layoutsOf('us').slice(0, 4));
const [shell, soot] = world.supplies as [Supply, Supply];

/** All cardstock is hers: what was to be bought in teal is Teal. */
function allHers(sheets: number | null, more: readonly Supply[] = [soot]): GuideAsk {
  const teal: Supply = { ...shell, id: 'teal', name: 'Teal cardstock', sheets };
  const cards = world.plan.cards.map((card) => ({
    ...card,
    layers: card.layers.map((layer) =>
      layer.choice.kind === 'wanted'
        ? { ...layer, choice: { kind: 'supply' as const, supply: 'teal' } }
        : layer,
    ),
  }));
  return {
    ...world,
    supplies: [{ ...shell, sheets }, teal, ...more],
    plan: { ...world.plan, cards },
  };
}

const takes = (ask: GuideAsk) => {
  const facts = factsOf(ask);
  return whatItTakes(ask, facts, stockNeeds(ask, facts));
};

const saidOf = (ask: GuideAsk, name: string): string =>
  takes(ask).taken.find((one) => one.name === name)!.said;

const page = (ask: GuideAsk): string =>
  guidePages(ask)
    .flatMap(({ marks }) => textOf(marks))
    .join(' ');

describe('what a batch takes, in one place', () => {
  test('every cardstock stands there with the sheets that its cuts take, and what she has', () => {
    const ask = allHers(9);
    const needs = stockNeeds(ask, factsOf(ask));
    expect(needs.map(({ stock }) => stock.name).toSorted()).toEqual([
      'Shell cardstock',
      'Teal cardstock',
    ]);
    for (const { stock, scheme } of needs) {
      const count = scheme!.slots.length;
      expect(saidOf(ask, stock.name)).toBe(
        `${count} ${count === 1 ? 'sheet' : 'sheets'} of 8 1/2 x 11 in; you have 9`,
      );
    }
  });

  test('where nothing is missing it says so in one line, and there is no shopping list', () => {
    const ask = allHers(9);
    expect(takes(ask).said).toBe('Nothing is to buy: you have all of it.');
    expect(page(ask)).toContain('Nothing is to buy: you have all of it.');
    expect(page(ask)).not.toContain('Shopping list');
  });

  test('of what she has not counted it does not say that it is enough', () => {
    const ask = allHers(null);
    expect(takes(ask).said).toBe('Nothing is to buy, if that many sheets are left.');
    expect(saidOf(ask, 'Teal cardstock')).toMatch(/; you have some$/);
  });

  test('what runs short is to buy, and so is a colour that she has not', () => {
    const short = allHers(1);
    const count = stockNeeds(short, factsOf(short)).find(({ stock }) => stock.key === 'shell')!
      .scheme!.slots.length;
    expect(count).toBeGreaterThan(1);
    expect(saidOf(short, 'Shell cardstock')).toMatch(
      new RegExp(`^${count} sheets .*; you have 1, ${count - 1} to buy$`),
    );
    expect(takes(world).taken.filter(({ toBuy }) => toBuy)).toHaveLength(1);
    expect(takes(world).said).toBe('What is to buy stands on the shopping list.');
    expect(page(world)).toContain('Shopping list');
  });

  test('for several people it counts the sheets of all of them', () => {
    const [one, three] = [allHers(9), { ...allHers(9), people: 3 }].map((ask) =>
      Number(/^\d+/.exec(saidOf(ask, 'Shell cardstock'))![0]),
    );
    expect(three).toBe(3 * one!);
  });

  test('an ink of hers is named with the greetings that are stamped in it, one that is missing with where to buy it', () => {
    const greeted = world.cards
      .filter(({ layout }) => layout.layers.some(({ role }) => role === 'greeting'))
      .map(({ number }) => number);
    expect(greeted.length).toBeGreaterThan(1);
    const said = saidOf(allHers(9), 'Soot ink');
    expect(said).toMatch(/^for the greetings of cards .*; you have it$/);
    expect(said.match(/\d+/g)!.map(Number)).toEqual(greeted);
    const without = takes(allHers(9, []));
    const ink = without.taken.find(({ kind }) => kind === 'ink')!;
    expect(ink).toMatchObject({ toBuy: true, name: 'Black ink' });
    expect(ink.said).toMatch(/^to stamp cards .*, to buy$/);
  });
});

describe('where a colour to buy is found on her papers', () => {
  const lab = { l: 93, a: 1, b: 4 };
  const shownOn = (card: number): string[] =>
    factsOf(world)
      .cards.find(({ number }) => number === card)!
      .layers.flatMap(({ paper }) =>
        paper === null ? [] : [`${paper.sheet.label}, ${paper.face}`],
      );

  test('it is named on a side that lies on those cards', () => {
    for (const { number } of world.cards) {
      const like = likePaper(world, lab, [number])!;
      expect(like).toMatch(/^the ground of Sheet \d+, (?:front|back)$/);
      expect(shownOn(number)).toContain(like.replace('the ground of ', ''));
    }
  });

  test('a sheet that is not cut is not named', () => {
    const spare = { ...world.pad.sheets[0]!, id: 'spare', label: 'Sheet 99' };
    const strange = { l: 50, a: 60, b: 30 };
    const own = (id: string) => ({
      ...spare.front!,
      id,
      palette: {
        tonal: false,
        colours: [{ lab: strange, share: 1, role: 'ground' as const, uncertainty: 0.5 }],
      },
    });
    const pad = {
      ...world.pad,
      sheets: [...world.pad.sheets, { ...spare, front: own('spare-front'), back: null }],
    };
    expect(likePaper({ ...world, pad }, strange, [1])).toBeNull();
  });
});
