import { describe, expect, test } from 'vitest';
import { coordination, coordinationOf } from '../../server/plan/coordination/coordination.ts';
import { createColourTable } from '../../server/plan/coordination/look.ts';
import { termsOf } from '../../server/plan/coordination/pair-score.ts';
import { lookOfSide } from '../../server/plan/coordination/shown.ts';
import { NO_TASTE } from '../../server/plan/coordination/taste.ts';
import { TERM_WEIGHTS } from '../../server/plan/weights.ts';
import { side } from './worlds.ts';
import type { Named } from './worlds.ts';

/** Rules of the trade: common practice, no source. */
describe('papers that go together', () => {
  const bouquet = side('bouquet', { white: 0.5, coral: 0.3, teal: 0.2 }, { scale: 30 });
  const dots = side('dots', { white: 0.6, teal: 0.25, coral: 0.15 }, { scale: 5, busyness: 0.3 });

  test('papers of one story beat a foreign one', () => {
    const foreign = side('foreign', { plum: 0.5, lemon: 0.3, violet: 0.2 }, { scale: 5 });
    expect(coordination(bouquet, dots).score).toBeGreaterThan(
      coordination(bouquet, foreign).score + 0.2,
    );
  });

  test('a near-miss red loses to the true red and to a clear contrast', () => {
    const red = side('red', { white: 0.6, red: 0.4 }, { scale: 20 });
    const with_ = (name: 'red' | 'nearlyRed' | 'teal'): number =>
      coordination(red, side(name, { white: 0.5, [name]: 0.5 }, { scale: 5, busyness: 0.2 })).score;
    expect(with_('nearlyRed')).toBeLessThan(with_('red') - 0.1);
    const plainNear = side('near', { nearlyRed: 1 }, { busyness: 0 });
    const plainTeal = side('teal', { teal: 1 }, { busyness: 0 });
    expect(coordination(red, plainNear).score).toBeLessThan(coordination(red, plainTeal).score);
  });

  test('white beside cream loses to white beside white', () => {
    const onWhite = side('w', { white: 0.7, teal: 0.3 }, { scale: 20 });
    const also = side('w2', { white: 0.7, teal: 0.3 }, { scale: 5, busyness: 0.2 });
    const onCream = side('c', { cream: 0.7, teal: 0.3 }, { scale: 5, busyness: 0.2 });
    expect(coordination(onWhite, onCream).score).toBeLessThan(
      coordination(onWhite, also).score - 0.05,
    );
  });

  test('two identical busy prints lose to busy beside calm', () => {
    const busy = side('b', { white: 0.4, coral: 0.3, teal: 0.3 }, { scale: 8, busyness: 0.9 });
    const twin = side('t', { white: 0.4, coral: 0.3, teal: 0.3 }, { scale: 8, busyness: 0.9 });
    const calm = side('k', { teal: 0.8, white: 0.2 }, { scale: 3, busyness: 0.2 });
    expect(coordination(busy, twin).score).toBeLessThan(coordination(busy, calm).score - 0.1);
  });

  /** One term of two sides. */
  const term = (
    name: string,
    a: ReturnType<typeof side>,
    b: ReturnType<typeof side>,
    touching = true,
  ): number => {
    const table = createColourTable();
    const look = (one: ReturnType<typeof side>): ReturnType<typeof lookOfSide> =>
      lookOfSide(
        one.palette,
        one.pattern,
        one.palette.colours.map((colour) => table.add(colour)),
        1,
      );
    return termsOf(look(a), look(b), table, NO_TASTE, touching).find((one) => one.name === name)!
      .value;
  };

  test('grounds: white on white is right, white on cream wrong, white on teal nearly right', () => {
    const on = (ground: Named): ReturnType<typeof side> =>
      side(ground, { [ground]: 0.7, coral: 0.3 });
    expect(term('grounds', on('white'), on('white'))).toBe(1);
    expect(term('grounds', on('white'), on('cream'))).toBeLessThan(0.3);
    expect(term('grounds', on('white'), on('teal'))).toBeCloseTo(0.85, 2);
  });

  test('contrast: a paper beside its like cannot be told apart where they touch; a step in lightness helps', () => {
    const mid = side('m', { kelp: 0.7, coral: 0.3 }, { busyness: 0.5 });
    const like = side('l', { kelp: 0.7, coral: 0.3 }, { busyness: 0.5 });
    const light = side('w', { white: 0.7, coral: 0.3 }, { busyness: 0.5 });
    expect(term('contrast', mid, like)).toBeCloseTo(0, 9);
    expect(term('contrast', mid, light)).toBeGreaterThan(0.95);
    expect(term('contrast', mid, like, false)).toBe(1);
  });

  test('scale, busyness, direction: big beside small, busy beside calm, no two directions of one size', () => {
    const print = (
      scale: number,
      busyness: number,
      direction: 'none' | 'two-way',
    ): ReturnType<typeof side> =>
      side(
        `${scale} ${busyness} ${direction}`,
        { white: 0.6, coral: 0.4 },
        { scale, busyness, direction },
      );
    expect(term('scale', print(10, 0.4, 'none'), print(10, 0.4, 'none'))).toBeCloseTo(0.35, 9);
    expect(term('scale', print(10, 0.4, 'none'), print(40, 0.4, 'none'))).toBe(1);
    expect(term('busyness', print(10, 0.9, 'none'), print(10, 0.9, 'none'))).toBe(0);
    expect(term('busyness', print(10, 0.9, 'none'), print(10, 0.2, 'none'))).toBe(1);
    expect(term('direction', print(10, 0.4, 'two-way'), print(10, 0.4, 'two-way'))).toBeCloseTo(
      0.6,
      9,
    );
    expect(term('direction', print(10, 0.4, 'two-way'), print(40, 0.4, 'two-way'))).toBe(1);
  });

  test('every term moves the score: two sides that differ in one of them only', () => {
    const base = { white: 0.6, coral: 0.4 };
    const with_ = (pattern: Parameters<typeof side>[2]): number =>
      coordination(
        side('a', base, { scale: 10, busyness: 0.5, direction: 'two-way' }),
        side('b', base, { scale: 10, busyness: 0.5, direction: 'none', ...pattern }),
      ).score;
    expect(with_({ scale: 40 })).toBeGreaterThan(with_({}) + 0.01);
    expect(with_({ direction: 'two-way' })).toBeLessThan(with_({}) - 0.003);
    expect(with_({ busyness: 0.1 })).toBeGreaterThan(with_({}) + 0.01);
  });

  test('a difference within the noise of the photos is no near miss', () => {
    const a = side('a', { white: 0.5, red: 0.5 }, { scale: 20 });
    const sure = side('s', { white: 0.5, nearlyRed: 0.5 }, { scale: 5 }, 0.5);
    const unsure = side('u', { white: 0.5, nearlyRed: 0.5 }, { scale: 5 }, 8);
    expect(coordination(a, unsure).score).toBeGreaterThan(coordination(a, sure).score);
  });

  test('a colour that meets its true partner is excused from its neighbours', () => {
    const term = (b: ReturnType<typeof side>): number =>
      coordination(side('a', { white: 0.5, red: 0.5 }), b).terms.find(
        ({ name }) => name === 'nearMisses',
      )!.value;
    const both = term(side('b', { white: 0.4, red: 0.3, nearlyRed: 0.3 }));
    const only = term(side('b', { white: 0.4, nearlyRed: 0.6 }));
    expect(both).toBeGreaterThan(only + 0.2);
  });

  test('is symmetric, in (0, 1], and made of terms in [0, 1] whose weights add up to 1', () => {
    const there = coordination(bouquet, dots);
    const back = coordination(dots, bouquet);
    expect(there.score).toBeCloseTo(back.score, 12);
    expect(there.score).toBeGreaterThan(0);
    expect(there.score).toBeLessThanOrEqual(1);
    for (const term of there.terms) {
      expect(term.value).toBeGreaterThanOrEqual(0);
      expect(term.value).toBeLessThanOrEqual(1);
    }
    expect(there.terms.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    expect(Object.values(TERM_WEIGHTS).reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  test('says in words what is shared, how much, and on what ground', () => {
    const { words } = coordination(bouquet, dots);
    expect(words[0]).toMatch(/^The first paper and the second share .*\(30 % and 15 %\)/);
    expect(words).toContain(
      'The larger print of the first paper lies beside the smaller print of the second.',
    );
    expect(words).toContain('The first paper and the second are both printed on white.');
  });

  test('two that go well are told by what ties them, and by what is against them after it', () => {
    const lines = { direction: 'two-way', scale: 20 } as const;
    const one = side('one', { cream: 0.5, red: 0.3, teal: 0.2 }, lines);
    const other = side('other', { cream: 0.5, red: 0.3, teal: 0.2 }, { ...lines, busyness: 0.3 });
    const { score, words } = coordination(one, other);
    const quarrel = words.findIndex((said) => said.includes('quarrel'));
    expect(score).toBeGreaterThanOrEqual(0.7);
    expect(words[0]).toMatch(/ share /);
    expect(quarrel).toBeGreaterThan(0);
  });

  test('whole sentences, what speaks against them first where they do not go well', () => {
    const loud = side('loud', { cream: 0.5, red: 0.5 }, { busyness: 0.9, scale: 8 });
    const near = side('near', { white: 0.5, nearlyRed: 0.5 }, { busyness: 0.9, scale: 8 });
    const { words } = coordination(loud, near);
    expect(words).toContain(
      'The first paper and the second show two kinds of red that almost meet, but not quite.',
    );
    const against = words.findIndex((said) => said.includes('of one size'));
    const good = coordination(loud, side('calm', { cream: 0.5, red: 0.5 }, { scale: 30 })).words;
    expect(against).toBeGreaterThan(0);
    expect(good.at(-1)).toMatch(/share|larger print|both printed/);
    expect(words).toContain('The prints of the first paper and the second are both busy.');
    expect(words).toContain('The prints of the first paper and the second are of one size.');
    for (const said of words) expect(said).toMatch(/^[A-Z].*\.$/);
  });

  test('all pairs of a pad come best first', () => {
    const sides = [bouquet, dots, side('x', { lemon: 0.6, violet: 0.4 })];
    const pairs = coordinationOf(sides);
    expect(pairs).toHaveLength(3);
    expect([pairs[0]!.a, pairs[0]!.b]).toEqual(['bouquet', 'dots']);
    expect(pairs[0]!.score).toBeCloseTo(coordination(bouquet, dots).score, 12);
  });

  test('a taste for lively contrast prefers the darker partner, for close match the nearer one', () => {
    const light = side('l', { sand: 0.7, coral: 0.3 }, { scale: 20 });
    const near = side('n', { shell: 0.6, coral: 0.4 }, { scale: 5, busyness: 0.2 });
    const far = side('f', { teal: 0.7, coral: 0.3 }, { scale: 5, busyness: 0.2 });
    const lead = (contrast: number): number => {
      const taste = { contrast, busy: 0, bold: 0 };
      return coordination(light, far, taste).score - coordination(light, near, taste).score;
    };
    expect(lead(1)).toBeGreaterThan(0);
    expect(lead(1)).toBeGreaterThan(lead(0));
    expect(lead(-1)).toBeLessThan(lead(0));
  });
});
