import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import { labFromHex } from '../../server/colour/spaces.ts';
import { bestCardstock } from '../../server/supplies/best-cardstock.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { bestFor, missingFor } from '../../server/supplies/best-for.ts';
import type { Occasion } from '../../server/supplies/best-for.ts';
import type { Supply } from '../../server/supplies/supply.ts';
import { bestGreetingInk, inksForAccents } from '../../server/supplies/best-ink.ts';
import { inkOnPaper } from '../../server/supplies/ink-on-paper.ts';
import { legibility } from '../../server/supplies/legibility.ts';
import { shoppingList } from '../../server/supplies/shopping-list.ts';
import { whatIsMissing } from '../../server/supplies/what-is-missing.ts';
import { CORAL, SAND, SHELL, TEAL, sideOf, supplyOf } from './sides.ts';

const WHITE = labFromHex('#ffffff');

describe('whether a greeting can be read', () => {
  // WCAG 2.2, success criterion 1.4.3; Understanding 1.4.3 gives #777777 on white as 4.47, which does not meet 4.5.
  test.each([
    ['#000000', 'small letters', 21],
    ['#767676', 'small letters', 4.54],
    ['#777777', 'large letters only', 4.48],
    ['#949494', 'large letters only', 3.03],
    ['#959595', 'cannot be read', 2.99],
  ])('%s on white: %s, contrast %d', (hex, verdict, ratio) => {
    const read = legibility(labFromHex(hex), WHITE);
    expect(read.verdict).toBe(verdict);
    expect(read.contrast).toBeCloseTo(ratio, 1);
  });

  test('light ink on a dark strip is asked to be lighter, not darker', () => {
    const read = legibility({ l: 45, a: 0, b: 0 }, { l: 20, a: 0, b: 0 });
    expect(read.verdict).toBe('cannot be read');
    expect(read.reason).toContain('lighter ink');
  });

  test('no darker ink is asked for where even black cannot be read', () => {
    const soot = { l: 18, a: 0, b: 0 };
    expect(legibility(soot, { l: 38, a: -20, b: -10 }).reason).toContain('too dark even for black');
    expect(legibility({ l: 60, a: 0, b: 0 }, { l: 70, a: 0, b: 0 }).reason).toContain('darker ink');
  });
});

describe('ink on paper', () => {
  const WHITE_CARD = { l: 95, a: 0, b: -2 };
  const colour = fc.record({
    l: fc.double({ min: 30, max: 80, noNaN: true }),
    a: fc.double({ min: -15, max: 15, noNaN: true }),
    b: fc.double({ min: -15, max: 15, noNaN: true }),
  });

  test('on white card the ink looks as it was swatched', () => {
    fc.assert(
      fc.property(colour, (ink) => {
        expect(difference(inkOnPaper(ink, WHITE_CARD).lab, ink)).toBeLessThan(0.01);
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  test('never comes out lighter than the paper, nor than the ink on white', () => {
    fc.assert(
      fc.property(colour, colour, (ink, paper) => {
        const { lab } = inkOnPaper(ink, paper);
        expect(lab.l).toBeLessThanOrEqual(Math.min(ink.l, paper.l) + 0.01);
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  // Half of the light through the ink, half of that back from the paper: a quarter of the light.
  // Y = 0.2502 is L 57.1, Y = 0.5 is L 76.07 (CIE 15, by hand).
  test('two greys that let half of the light by make one that lets a quarter by', () => {
    const half = { l: 76.07, a: 0, b: 0 };
    const card = { l: 100, a: 0, b: 0 };
    const onCard = inkOnPaper(half, half).lab;
    const share = ((WHITE_CARD.l + 16) / (card.l + 16)) ** 3;
    expect(((onCard.l + 16) / 116) ** 3).toBeCloseTo(0.25 / share, 2);
  });
});

describe('the best of what she has', () => {
  const side = sideOf([SHELL, TEAL, CORAL]);
  const teal = supplyOf(TEAL, { id: 'teal' });
  const grey = supplyOf({ l: 60, a: 1, b: 1 }, { id: 'grey' });
  const odd = supplyOf({ l: 55, a: -40, b: 40 }, { id: 'odd' });

  test('cardstock that picks up a colour comes before a quiet neutral, that before a stranger', () => {
    const ranked = bestCardstock([odd, grey, teal], [side]);
    expect(ranked.map(({ supply }) => supply.id)).toEqual(['teal', 'grey', 'odd']);
    expect(ranked.map(({ use }) => use)).toEqual(['picks up', 'quiet', 'odd']);
  });

  test('cardstock that is used up, and ink, are passed over', () => {
    const used = { ...teal, id: 'used', sheets: 0 };
    const ink = { ...teal, id: 'ink', kind: 'ink' as const };
    expect(bestCardstock([used, ink, grey], [side]).map(({ supply }) => supply.id)).toEqual([
      'grey',
    ]);
  });

  test('for a greeting what can be read comes first, then what picks up a colour', () => {
    const ink = { kind: 'ink' as const };
    const pale = supplyOf(SAND, { id: 'pale', ...ink });
    const soot = supplyOf({ l: 15, a: 0, b: 0 }, { id: 'soot', ...ink });
    const deep = supplyOf(TEAL, { id: 'deep', ...ink });
    const ranked = bestGreetingInk([pale, soot, deep], SHELL, [side]);
    expect(ranked.map((one) => one.ink.id)).toEqual(['deep', 'soot', 'pale']);
    expect(ranked[2]!.reads.verdict).toBe('cannot be read');
  });

  test('each accent gets its nearest ink', () => {
    const inks = [
      supplyOf(CORAL, { id: 'coral ink', kind: 'ink' }),
      supplyOf(TEAL, { id: 'teal ink', kind: 'ink' }),
    ];
    expect(inksForAccents(inks, side).map(({ best }) => best?.ink.id)).toEqual([
      'teal ink',
      'coral ink',
    ]);
    expect(inksForAccents([], side).map(({ best }) => best)).toEqual([null, null]);
  });

  test('no ink is looked for that is as light as paper: a dye ink only darkens', () => {
    const occasion = { card: 1, strips: [], wantsCardstock: false, wantsAccent: true };
    const pale = { ...occasion, sides: [sideOf([TEAL, SHELL])] };
    expect(whatIsMissing([], pale)).toEqual([]);
    const coral = { ...occasion, sides: [sideOf([TEAL, SHELL, CORAL])] };
    expect(whatIsMissing([], coral)).toMatchObject([{ kind: 'ink', lab: CORAL, card: 1 }]);
    expect(whatIsMissing([], { ...coral, wantsAccent: false })).toEqual([]);
  });

  test('one black serves the greetings of all cards, whatever is in their papers, but no dark strip', () => {
    const asked = (strip: Lab, card: number): Occasion => ({
      card,
      sides: [sideOf([SHELL, TEAL, CORAL])],
      strips: [strip],
      wantsCardstock: false,
      wantsAccent: false,
    });
    const dark = { l: 25, a: 10, b: 5 };
    const list = missingFor([], [asked(SHELL, 1), asked(SAND, 2), asked(dark, 3)]);
    expect(list.map(({ kind, name, cards }) => [kind, name, cards])).toEqual([
      ['ink', 'black', [1, 2]],
    ]);
    const soot = supplyOf({ l: 15, a: 0, b: 0 }, { id: 'soot', kind: 'ink' });
    expect(missingFor([soot], [asked(SHELL, 1), asked(dark, 3)])).toEqual([]);
  });

  test('strips that look alike stand together only where the same ink is the best for both', () => {
    const [teal, coral] = [TEAL, { l: 42, a: 50, b: 30 }].map((lab, at) =>
      supplyOf(lab, { id: ['teal', 'coral'][at]!, kind: 'ink' }),
    ) as [Supply, Supply];
    const asked = (lab: Lab, card: number): Occasion => ({
      card,
      sides: [sideOf([SHELL, lab])],
      strips: [SHELL],
      wantsCardstock: false,
      wantsAccent: false,
    });
    const cards = [asked(teal.lab, 1), asked(coral.lab, 2), asked(teal.lab, 3)];
    const { greetings } = bestFor([coral, teal], cards);
    expect(greetings.map((one) => [one.inks[0]!.ink.id, one.cards])).toEqual([
      ['teal', [1, 3]],
      ['coral', [2]],
    ]);
  });

  test('colours that pass for each other are bought once, for all their cards', () => {
    const near = { ...TEAL, l: TEAL.l + 2 };
    const list = shoppingList([
      { kind: 'cardstock', lab: TEAL, card: 3, area: 100 },
      { kind: 'cardstock', lab: TEAL, card: 1, area: 100 },
      { kind: 'cardstock', lab: near, card: 2, area: 50 },
      { kind: 'cardstock', lab: CORAL, card: 2, area: 10 },
      { kind: 'ink', lab: TEAL, card: 4, area: 0 },
    ]);
    expect(list.map(({ kind, cards, area }) => [kind, cards, area])).toEqual([
      ['cardstock', [1, 2, 3], 250],
      ['cardstock', [2], 10],
      ['ink', [4], 0],
    ]);
    expect(list[0]!.lab).toEqual(TEAL);
  });
});
