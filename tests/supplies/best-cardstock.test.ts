import { describe, expect, test } from 'vitest';
import { hardlyToldApart, twinsAmong } from '../../server/supplies/alike.ts';
import { bestCardstock } from '../../server/supplies/best-cardstock.ts';
import { matchOf } from '../../server/supplies/match-of.ts';
import { CORAL, SAND, SHELL, TEAL, sideOf, supplyOf } from './sides.ts';

describe('what a cardstock does under a paper', () => {
  test('is told by the very verdict of the match, an unsure one too', () => {
    const side = sideOf([SHELL, TEAL], { uncertainty: 5 });
    const near = supplyOf({ ...TEAL, l: 41 }, { photo: 'another', uncertainty: 4 });
    expect(matchOf(near, side).verdict).toBe('cannot tell');
    const [ranked] = bestCardstock([near], [side]);
    expect(ranked).toMatchObject({ use: 'unsure', match: { verdict: 'cannot tell' } });
    expect(ranked!.match.reason).toBe(matchOf(near, side).reason);
    for (const lab of [TEAL, { ...TEAL, l: 38.5 }]) {
      const sure = supplyOf(lab);
      const [told] = bestCardstock([sure], [sideOf([SHELL, TEAL])]);
      expect(['match', 'close']).toContain(told!.match.verdict);
      expect(told!.use).toBe('picks up');
    }
  });

  test('a colour that has its cardstock gives way to the others, and of equal worth more of the paper comes first', () => {
    const plain = sideOf([TEAL, SAND, CORAL]);
    const shares = [0.6, 0.1, 0.3];
    const colours = plain.palette.colours.map((one, at) => ({ ...one, share: shares[at]! }));
    const side = { ...plain, palette: { ...plain.palette, colours } };
    const stock = [
      supplyOf(SAND, { id: 'a sand' }),
      supplyOf({ ...TEAL, l: 36.4 }, { id: 'b other teal' }),
      supplyOf(CORAL, { id: 'c coral' }),
      supplyOf(TEAL, { id: 'd teal' }),
    ];
    expect(bestCardstock(stock, [side]).map(({ supply }) => supply.id)).toEqual([
      'd teal',
      'c coral',
      'a sand',
      'b other teal',
    ]);
  });

  test('two photos of one card take one place, and the place names both', () => {
    const first = supplyOf(TEAL, { id: 'first', name: 'Teal' });
    const again = supplyOf({ ...TEAL, l: 35.9 }, { id: 'again', photo: 'later' });
    const ranked = bestCardstock([again, first], [sideOf([SHELL, TEAL])]);
    expect(ranked).toHaveLength(1);
    expect(ranked[0]).toMatchObject({ supply: { id: 'first' }, alike: [{ id: 'again' }] });
  });
});

describe('supplies that can hardly be told apart', () => {
  // Paravina et al. 2015, doi:10.1111/jerd.12149: half of the observers see 0.8 and accept 1.8 CIEDE2000.
  const teal = supplyOf(TEAL, { id: 'teal' });
  const near = { ...TEAL, l: 36.4 };

  test('are one card between two photos, two in one picture', () => {
    expect(hardlyToldApart(teal, supplyOf(near, { photo: 'later' }))).toBe(true);
    expect(hardlyToldApart(teal, supplyOf(near, { photo: null }))).toBe(true);
    expect(hardlyToldApart(teal, supplyOf(near))).toBe(false);
    expect(hardlyToldApart(teal, supplyOf(TEAL))).toBe(true);
  });

  test('are never of two kinds, nor glossy', () => {
    expect(hardlyToldApart(teal, supplyOf(TEAL, { kind: 'ink' }))).toBe(false);
    expect(hardlyToldApart(teal, supplyOf(TEAL, { glossy: true }))).toBe(false);
  });

  test('are told each with the one that was there first', () => {
    const later = ['one', 'two'].map((id) => supplyOf(near, { id, photo: id }));
    const sand = supplyOf(SAND, { id: 'sand' });
    const twins = twinsAmong([teal, sand, ...later]);
    expect(twins.map(({ first, again }) => [first.id, again.id])).toEqual([
      ['teal', 'one'],
      ['teal', 'two'],
    ]);
  });
});
