import { describe, expect, test } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { nameOf } from '../../server/colour/names.ts';
import type { PaletteColour } from '../../server/colour/palette.ts';
import type { Side } from '../../server/pad/pad.ts';
import { bestCardstock } from '../../server/supplies/best-cardstock.ts';
import { bestFor } from '../../server/supplies/best-for.ts';
import { inksForAccents } from '../../server/supplies/best-ink.ts';
import { matchOf, type MatchVerdict } from '../../server/supplies/match-of.ts';
import type { Supply } from '../../server/supplies/supply.ts';
import { chanceOf } from '../colour/drawn.ts';
import { CORAL, SAND, SHELL, TEAL, sideOf, supplyOf } from './sides.ts';

/** Sides of all sorts, plain, in thin strokes and with tones that run; each with supplies near its colours and far off. */
function* anyOf(count: number): Generator<{ side: Side; supply: Supply; place: number }> {
  const chance = chanceOf(11);
  const any = (): Lab => ({
    l: 15 + 80 * chance(),
    a: 100 * (chance() - 0.5),
    b: 100 * (chance() - 0.5),
  });
  const near = ({ l, a, b }: Lab): Lab => ({
    l: l + 16 * (chance() - 0.5),
    a: a + 16 * (chance() - 0.5),
    b: b + 16 * (chance() - 0.5),
  });
  const printed = (one: PaletteColour): PaletteColour => {
    const { lab } = one;
    const how = chance();
    if (how < 0.3) return { ...one, inside: 0.4 * chance() };
    if (how > 0.4) return one;
    const [darkest, lightest] = [
      { ...lab, l: lab.l - 12 },
      { ...lab, l: Math.min(98, lab.l + 15) },
    ];
    return { ...one, range: { darkest, lightest } };
  };
  for (let round = 0; round < count; round++) {
    const plain = sideOf(Array.from({ length: 2 + Math.floor(5 * chance()) }, any), {
      uncertainty: 0.2 + 2 * chance(),
    });
    const colours = plain.palette.colours.map(printed);
    const place = Math.floor(colours.length * chance());
    const photo = ['papers', 'another', null][Math.floor(3 * chance())]!;
    const lab = chance() < 0.7 ? near(colours[place]!.lab) : any();
    yield {
      side: { ...plain, palette: { ...plain.palette, colours } },
      supply: supplyOf(lab, { uncertainty: 0.2 + 2 * chance(), photo }),
      place,
    };
  }
}

/** How far a colour of a side was seen from a supply: of a tone that runs, from any place of its run. */
function seenFrom({ lab }: Supply, side: Side): number[] {
  return side.palette.colours.map((_, place) => {
    const one = { ...side.palette.colours[place]!, inside: 1 };
    return matchOf(supplyOf(lab), { ...side, palette: { colours: [one], tonal: false } })
      .difference;
  });
}

describe('what the words of a match name', () => {
  test.each([true, false])('is what its figure was made with; asked of one: %s', (ofOne) => {
    for (const { side, supply, place } of anyOf(1500)) {
      const match = matchOf(supply, side, ofOne ? place : undefined);
      const { nearest, at, reason } = match;
      if (ofOne) expect(nearest).toBe(side.palette.colours[place]);
      expect(reason.toLowerCase()).toContain(`the paper's ${nameOf(nearest.lab).words}`);
      expect(match.difference).toBeCloseTo(difference(supply.lab, at), 9);
      const elsewhere = difference(at, nearest.lab) >= 0.8;
      if (reason.includes('where it runs')) expect(elsewhere).toBe(true);
      if (elsewhere && !reason.includes('too fine'))
        expect(reason).toContain(`runs ${at.l > nearest.lab.l ? 'lighter' : 'darker'}`);
    }
  });

  test.each([true, false])('is called the nearest only when it is; asked of one: %s', (ofOne) => {
    const told = { nearest: 0, nearer: 0 };
    for (const { side, supply, place } of anyOf(1500)) {
      const match = matchOf(supply, side, ofOne ? place : undefined);
      const seen = seenFrom(supply, side);
      const least = Math.min(...seen);
      if (match.reason.includes('the nearest colour of this side')) {
        expect(match.difference).toBeCloseTo(least, 9);
        told.nearest++;
      }
      const nearer = /Nearer to it is (?:the|another) (.*) of this side/.exec(match.reason)?.[1];
      if (nearer !== undefined) {
        expect(match.difference).toBeGreaterThan(least);
        expect(nearer).toBe(nameOf(side.palette.colours[seen.indexOf(least)]!.lab).words);
        told.nearer++;
      } else if (match.verdict === 'apart') expect(match.difference).toBeCloseTo(least, 9);
    }
    expect(told.nearest).toBeGreaterThan(50);
    expect(told.nearer > 50).toBe(ofOne);
  });

  test('another colour of the same name is told as another', () => {
    const [grey, other]: [Lab, Lab] = [
      { l: 62, a: 0, b: 0 },
      { l: 48, a: 0, b: 0 },
    ];
    expect(nameOf(grey).words).toBe(nameOf(other).words);
    const { reason } = matchOf(supplyOf(other), sideOf([grey, other]), 0);
    expect(reason).toContain(`Nearer to it is another ${nameOf(grey).words} of this side`);
  });

  test('no direction is told of what cannot be told', () => {
    for (const { side, supply } of anyOf(1000)) {
      const { verdict, direction } = matchOf(supply, side);
      if (verdict === 'cannot tell') expect(direction).toBe('');
      if (verdict === 'apart') expect(direction).not.toBe('');
    }
    expect(matchOf(supplyOf(TEAL, { glossy: true }), sideOf([SHELL])).direction).toBe('');
  });
});

describe('what the best of hers is told by', () => {
  const figures = ({ verdict, difference, uncertainty, reason }: MatchVerdict): unknown => ({
    verdict,
    difference,
    uncertainty,
    reason,
  });

  test('an ink for an accent has the figures of the match with that accent', () => {
    for (const { side, supply } of anyOf(1000)) {
      const ink: Supply = { ...supply, kind: 'ink' };
      for (const { accent, best } of inksForAccents([ink], side)) {
        const place = side.palette.colours.indexOf(accent);
        expect(figures(best!.match)).toEqual(figures(matchOf(ink, side, place)));
      }
    }
  });

  test('asked of one colour, it is told of that one, be it the ground or nearer to another', () => {
    const side = sideOf([SHELL, TEAL, { ...TEAL, l: 39 }]);
    const [ink, card] = [
      supplyOf({ ...TEAL, l: 38 }, { id: 'ink', kind: 'ink' }),
      supplyOf({ ...TEAL, l: 38 }, { id: 'card' }),
    ];
    const occasion = {
      card: 0,
      sides: [side],
      strips: [],
      wantsCardstock: true,
      wantsAccent: true,
    };
    const best = bestFor([ink, card], [{ ...occasion, colour: 1 }]);
    expect(best.cardstock[0]).toMatchObject({ use: 'picks up', match: { nearest: { lab: TEAL } } });
    expect(best.accents).toHaveLength(1);
    expect(best.accents[0]).toMatchObject({
      accent: { lab: TEAL },
      best: { match: { verdict: 'close' } },
    });
    expect(best.missing).toEqual([]);
    const ground = bestFor([ink, card], [{ ...occasion, colour: 0 }]);
    expect(ground.accents[0]).toMatchObject({ accent: { lab: SHELL } });
    expect(ground.cardstock[0]!.use).toBe('odd');
    expect(ground.missing.map(({ kind, lab }) => [kind, lab])).toEqual([['cardstock', SHELL]]);
  });

  test('a neutral is no quiet one where it was asked beside a colour', () => {
    const white = supplyOf({ l: 94, a: 0, b: 3 });
    const side = sideOf([CORAL, SAND]);
    expect(bestCardstock([white], [side])[0]!.use).toBe('quiet');
    expect(bestCardstock([white], [side], 0)[0]!.use).toBe('odd');
  });

  test('an ink that shines gives way to any other', () => {
    const shining = supplyOf(CORAL, { id: 'shining', kind: 'ink', glossy: true });
    const other = supplyOf(SAND, { id: 'other', kind: 'ink' });
    const side = sideOf([SHELL, CORAL]);
    for (const inks of [
      [shining, other],
      [other, shining],
    ])
      expect(inksForAccents(inks, side)[0]!.best!.ink.id).toBe('other');
  });
});
