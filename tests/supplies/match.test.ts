import { describe, expect, test } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import type { PaletteColour } from '../../server/colour/palette.ts';
import { labFromLinear, linearFromLab } from '../../server/colour/spaces.ts';
import type { Side } from '../../server/pad/pad.ts';
import { chancesOfBands } from '../../server/supplies/chances.ts';
import { uncertaintyOfDifference } from '../../server/supplies/compared.ts';
import { directionOf } from '../../server/supplies/direction.ts';
import { matchOf } from '../../server/supplies/match-of.ts';
import { waysOf } from '../../server/supplies/thin.ts';
import { LIMITS, verdictAmong, verdictOf } from '../../server/supplies/verdict.ts';
import { chanceOf, normal } from '../colour/drawn.ts';
import { CORAL, SAND, SHELL, TEAL, sideOf, supplyOf } from './sides.ts';

describe('how likely a true difference lies in a band', () => {
  // Drawn instead of integrated: true differences spread evenly over 0 to 30, each measured once.
  test.each([
    [1, 1],
    [2.5, 1.4],
    [4, 3],
    [6, 5],
  ])('measured %d, uncertainty %d: as often as among drawn colours', (measured, uncertainty) => {
    const chance = chanceOf(7);
    const sigma = uncertainty / Math.sqrt(3);
    const counts = [0, 0, 0];
    for (let round = 0; round < 600_000; round++) {
      const truth = 30 * chance();
      const seen = Math.hypot(
        truth + sigma * normal(chance),
        sigma * normal(chance),
        sigma * normal(chance),
      );
      if (Math.abs(seen - measured) < 0.1) counts[truth <= 1.8 ? 0 : truth <= 5 ? 1 : 2]!++;
    }
    const all = counts.reduce((sum, count) => sum + count, 0);
    expect(all).toBeGreaterThan(1000);
    chancesOfBands(measured, uncertainty, [1.8, 5]).forEach((part, band) =>
      expect(Math.abs(part - counts[band]! / all)).toBeLessThan(0.03),
    );
  });

  test('the chances add up to 1, and without uncertainty one of them is 1', () => {
    for (const measured of [0, 0.01, 1.7, 3, 5.2, 60])
      for (const uncertainty of [0, 0.3, 2, 9]) {
        const chances = chancesOfBands(measured, uncertainty, [1.8, 5]);
        expect(chances.reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 9);
        if (uncertainty === 0) expect(Math.max(...chances)).toBeCloseTo(1, 9);
      }
  });
});

describe('the verdict', () => {
  // Paravina et al. 2015, doi:10.1111/jerd.12149: 50:50 perceptibility 0.8, acceptability 1.8 CIEDE2000.
  test('parts where half of the observers see and accept a difference', () => {
    expect(LIMITS).toMatchObject({ perceived: 0.8, accepted: 1.8 });
    expect(verdictOf(1.79, 0).verdict).toBe('match');
    expect(verdictOf(1.81, 0).verdict).toBe('close');
    expect(verdictOf(4.99, 0).verdict).toBe('close');
    expect(verdictOf(5.01, 0).verdict).toBe('apart');
  });

  test('at the limit itself, or with a poor photo, nothing can be told', () => {
    expect(verdictOf(1.8, 0.4).verdict).toBe('cannot tell');
    expect(verdictOf(0.5, 4).verdict).toBe('cannot tell');
    expect(verdictOf(5.4, 6.6).verdict).toBe('cannot tell');
    expect(verdictOf(30, 4).verdict).toBe('apart');
  });

  test('of several places that may be true each counts by its weight and by one over its distance squared', () => {
    const judged = verdictAmong(
      [
        { difference: 3, weight: 1 },
        { difference: 30, weight: 100 },
      ],
      0.1,
    );
    expect(judged.verdict).toBe('cannot tell');
    expect(judged.likely).toBeCloseTo(0.5, 2);
    // Two equal heaps 27 apart deviate by half of that from their mean.
    expect(judged.uncertainty).toBeCloseTo(13.5, 1);
    expect(verdictAmong([{ difference: 3, weight: 1 }], 0.1)).toEqual(verdictOf(3, 0.1));
  });

  test('a match is never called from a photo that is off by twice the limit', () => {
    for (let d = 0; d < 4; d += 0.05) expect(verdictOf(d, 3.6).verdict).not.toBe('match');
  });
});

describe('a supply against a side', () => {
  const side = sideOf([SHELL, TEAL, CORAL]);

  test('meets the colour that it is nearest to', () => {
    const match = matchOf(supplyOf({ ...TEAL, l: 35.4 }), side);
    expect(match.nearest.lab).toEqual(TEAL);
    expect(match.verdict).toBe('match');
    expect(match.difference).toBeCloseTo(difference({ ...TEAL, l: 35.4 }, TEAL), 9);
    expect(matchOf(supplyOf(SAND), side).verdict).toBe('apart');
  });

  test('stays with the one colour that is asked of, however near another is', () => {
    const match = matchOf(supplyOf(TEAL), side, 2);
    expect(match.nearest.lab).toEqual(CORAL);
    expect(match.difference).toBeCloseTo(difference(TEAL, CORAL), 9);
    expect(match.verdict).toBe('apart');
  });

  test('is measured against the nearest colour of all, whatever their lightness', () => {
    const chance = chanceOf(3);
    const any = (): Lab => ({
      l: 100 * chance(),
      a: 120 * (chance() - 0.5),
      b: 120 * (chance() - 0.5),
    });
    for (let round = 0; round < 500; round++) {
      const [lab, colours] = [any(), Array.from({ length: 6 }, any)];
      const least = Math.min(...colours.map((colour) => difference(lab, colour)));
      expect(matchOf(supplyOf(lab), sideOf(colours)).difference).toBe(least);
    }
  });

  test('errors that both share cancel in one photo, not between two', () => {
    const supply = supplyOf({ ...TEAL, l: 36 }, { uncertainty: 6 });
    const poor = sideOf([SHELL, TEAL], { uncertainty: 6 });
    const together = matchOf(supply, poor);
    const apart = matchOf({ ...supply, photo: 'another' }, poor);
    expect(together.uncertainty).toBeLessThanOrEqual(apart.uncertainty / 2);
    expect(together.verdict).toBe('match');
    expect(apart.verdict).toBe('cannot tell');
    expect(apart.reason).toContain('one picture');
  });

  test('what a photo without a white card is off by is not shared with another photo', () => {
    const [colour] = side.palette.colours;
    const stated = (uncertainty: number): number =>
      uncertaintyOfDifference(supplyOf(TEAL, { uncertainty }), colour!, 'two photos');
    expect(stated(1.5)).toBeLessThan(0.7 * 1.5);
    expect(stated(5)).toBeGreaterThan(0.95 * 5);
  });

  test('a typed colour that cannot be told is to be laid into the picture', () => {
    const typed = matchOf(supplyOf({ ...TEAL, l: 37.4 }, { photo: null, uncertainty: 1 }), side);
    expect(typed.verdict).toBe('cannot tell');
    expect(typed.reason).toContain('typed');
  });

  test('a glossy smear cannot be told, whatever it measures, and she is told to turn it', () => {
    const match = matchOf(supplyOf(TEAL, { kind: 'ink', glossy: true }), side);
    expect(match.verdict).toBe('cannot tell');
    expect(match.reason).toMatch(/glossy smear.*nothing shines/i);
    expect(matchOf(supplyOf(TEAL, { kind: 'ink' }), side).verdict).toBe('match');
  });

  test('a tone that runs is met wherever it runs', () => {
    const wash = sideOf([TEAL]);
    const range = { darkest: { ...TEAL, l: 25 }, lightest: { ...TEAL, l: 50 } };
    const tonal: typeof wash = {
      ...wash,
      palette: { colours: [{ ...wash.palette.colours[0]!, range }], tonal: true },
    };
    const light: Lab = { ...TEAL, l: 46 };
    expect(matchOf(supplyOf(light), wash).verdict).toBe('apart');
    expect(matchOf(supplyOf(light), tonal).verdict).toBe('match');
  });
});

describe('a print too fine for the photo', () => {
  // Lines of coral that cover six tenths of each pixel, mixed with the shell ground in linear light.
  const mixed = (part: number): Lab => {
    const [ground, ink] = [linearFromLab(SHELL), linearFromLab(CORAL)];
    const of = (channel: 'r' | 'g' | 'b'): number =>
      (1 - part) * ground[channel] + part * ink[channel];
    return labFromLinear({ r: of('r'), g: of('g'), b: of('b') });
  };
  const printed = (lab: Lab, inside: number): Side => {
    const side = sideOf([SHELL, lab]);
    const [ground, accent] = side.palette.colours as [PaletteColour, PaletteColour];
    const colours = [
      { ...ground, share: 0.85, inside: 0.8 },
      { ...accent, share: 0.15, inside },
    ];
    return { ...side, palette: { colours, tonal: false } };
  };

  test('its ink is not called apart: the photo cannot tell, and the reason says how it could', () => {
    expect(difference(mixed(0.6), CORAL)).toBeGreaterThan(LIMITS.close);
    const match = matchOf(supplyOf(CORAL), printed(mixed(0.6), 0.05));
    expect(match.verdict).toBe('cannot tell');
    expect(match.reason).toContain('too fine');
    expect(match.reason).toContain('nearer');
  });

  test('the doubt lies along the way to it and not all round: off the way a verdict is given', () => {
    const fine = printed(mixed(0.7), 0.05);
    const along = matchOf(supplyOf(CORAL), fine);
    const beside = matchOf(supplyOf({ ...CORAL, a: 5, b: 52 }), fine);
    expect([along.verdict, beside.verdict]).toEqual(['cannot tell', 'apart']);
    expect(along.uncertainty).toBeGreaterThan(beside.uncertainty);
  });

  test('strokes are seen further from what is beside them in linear light, never beyond what light can be', () => {
    const { palette } = printed(mixed(0.6), 0.05);
    const ways = waysOf(palette.colours[1]!, palette);
    expect(ways).toHaveLength(1);
    const reached = Math.min(...ways[0]!.places.map(({ lab }) => difference(lab, CORAL)));
    expect(reached).toBeLessThan(2);
    const weights = ways[0]!.places.map(({ weight }) => weight);
    expect(weights).toEqual([...weights].sort((p, q) => q - p));
    expect(waysOf(palette.colours[0]!, palette)).toEqual([]);
    for (const { lab } of ways[0]!.places)
      for (const channel of Object.values(linearFromLab(lab)))
        expect(channel).toBeGreaterThan(-0.011);
  });

  test('another ink, an ink that is paler than what is seen, and a broad print stay apart', () => {
    expect(matchOf(supplyOf(TEAL), printed(mixed(0.6), 0.05)).verdict).toBe('apart');
    expect(matchOf(supplyOf(mixed(0.3)), printed(mixed(0.6), 0.05)).verdict).toBe('apart');
    expect(matchOf(supplyOf(CORAL), printed(mixed(0.6), 0.5)).verdict).toBe('apart');
  });
});

describe('the direction in words', () => {
  test.each([
    [{ ...TEAL, l: 39 }, TEAL, 'a little lighter'],
    [{ ...TEAL, l: 31 }, TEAL, 'a little darker'],
    [{ l: 60, a: 30, b: 20 }, CORAL, 'a little greyer'],
    [{ l: 78, a: 3, b: 27 }, SAND, 'a little stronger'],
    [{ l: 60, a: 34, b: 35.2 }, CORAL, 'clearly yellower'],
  ])('%o beside %o is %s', (colour, beside, words) => {
    expect(directionOf(colour, beside)).toContain(words);
  });

  test('is empty where most eyes see no difference', () => {
    expect(directionOf({ ...TEAL, l: 35.2 }, TEAL)).toBe('');
  });
});
