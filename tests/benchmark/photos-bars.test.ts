import { describe, expect, it } from 'vitest';
import type { Figure } from './figure.ts';
import { colourFigures } from './photos-figures.ts';
import type { ColourError } from './photos-figures.ts';
import { manyCardFigures } from './photos-many-figures.ts';
import { calibrationFigures, supplyFigures } from './photos-plain-figures.ts';

/** The bar on each figure whose name ends so; a name that is not there fails. */
const barOf = (figures: readonly Figure[], name: string): Figure['bar'] => {
  const found = figures.filter((figure) => figure.name.endsWith(name));
  expect(found).toHaveLength(1);
  return found[0]!.bar;
};

const MEDIAN = 'printed colours, median';

describe('the bars on colours of photos', () => {
  it.each([
    ['scanner', { at: 'most', value: 0.6 }],
    ['normal', { at: 'most', value: 1.5 }],
    ['hard', null],
  ] as const)('are the same on large and on small pictures: %s', (level, bar) => {
    expect(barOf(colourFigures([], level), MEDIAN)).toEqual(bar);
    expect(barOf(manyCardFigures([], level), MEDIAN)).toEqual(bar);
  });

  it('are the same on large and on small pictures of supplies, whose rows are told apart', () => {
    for (const many of ['', ', many white cards'])
      expect(
        barOf(supplyFigures([], 'cardstock', 1, many), `cardstock${many}: colour, median`),
      ).toEqual({ at: 'most', value: 1 });
  });

  it('say beside how many white cards stated errors were found to hold', () => {
    const lab = { l: 50, a: 0, b: 0 };
    const error = (group: string, off: number): ColourError => ({
      where: '',
      picture: group,
      group,
      truth: lab,
      read: lab,
      off,
      stated: 1,
    });
    const errors = [error('one', 0.5), error('one', 1.5), error('two', 0.5), error('two', 3)];
    const [once, twice] = calibrationFigures(errors, 'colours', 7);
    expect(once!.note).toMatch(/^50 % of 4, beside 2 white cards;/);
    expect(once!.value).toBeCloseTo(18, 9);
    expect(twice!.value).toBeCloseTo(20, 9);
    expect(once!.bar).toEqual({ at: 'most', value: 7 });
  });
});
