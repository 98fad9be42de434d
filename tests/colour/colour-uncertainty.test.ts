import { describe, expect, it } from 'vitest';
import { colourUncertainty } from '../../server/colour/colour-uncertainty.ts';
import { difference } from '../../server/colour/difference.ts';
import type { ColourError, Lab } from '../../server/colour/lab.ts';
import { labFromLinear, linearFromLab } from '../../server/colour/spaces.ts';
import { chanceOf, normal } from './drawn.ts';

const COLOURS: Record<string, Lab> = {
  'light grey': { l: 85, a: 0, b: 0 },
  yellow: { l: 82, a: 4, b: 68 },
  blue: { l: 42, a: 4, b: -40 },
  red: { l: 48, a: 52, b: 30 },
};
const MANY = 1_000_000;

/** The colour as it is read when its white is taken for another: each channel of its light is off by one factor. */
function readBeside(lab: Lab, truly: Lab, taken: Lab): Lab {
  const [own, white, other] = [lab, truly, taken].map(linearFromLab) as [
    ReturnType<typeof linearFromLab>,
    ReturnType<typeof linearFromLab>,
    ReturnType<typeof linearFromLab>,
  ];
  return labFromLinear({
    r: (own.r * other.r) / white.r,
    g: (own.g * other.g) / white.g,
    b: (own.b * other.b) / white.b,
  });
}

/** The part, in percent, of 1000 readings that are off by no more than `times` what is stated. */
function within(lab: Lab, error: ColourError, times: number): number {
  const chance = chanceOf(7);
  const open = error.hueOpen ?? 1;
  const paper = { l: 94.4, a: 0.3, b: -3.4 };
  let inside = 0;
  for (let round = 0; round < 1000; round++) {
    const truly = {
      l: paper.l + 0.75 * error.reference * normal(chance),
      a: paper.a + 0.3 * error.reference * open * normal(chance),
      b: paper.b + 1.2 * error.reference * open * normal(chance),
    };
    const off = difference(readBeside(lab, truly, paper), lab);
    if (off <= times * colourUncertainty(lab, MANY, error)) inside++;
  }
  return inside / 10;
}

// Checked against errors drawn as they are said to be: no formula of the stated error is used to draw them.
describe('the stated error of a colour', () => {
  // What moves a colour in one direction by several ways counts as if it moved it in several: so it is a little wide.
  it.each(Object.keys(COLOURS))(
    'holds 68 to 76 in a hundred of what a wrong white does to %s, and twice it 95 or more',
    (name) => {
      const lab = COLOURS[name]!;
      const wide = { noise: 0, field: 0, reference: 2.5 };
      for (const error of [wide, { ...wide, hueOpen: 0.45 }]) {
        expect(within(lab, error, 1)).toBeGreaterThanOrEqual(68);
        expect(within(lab, error, 1)).toBeLessThanOrEqual(76);
        expect(within(lab, error, 2)).toBeGreaterThanOrEqual(95);
      }
    },
  );

  it('stays a number however wrong the white may be, and on black without any noise', () => {
    const black = { l: 0, a: 0, b: 0 };
    const still = { noise: 1.7e-161, field: 0.5, reference: 1 };
    expect(colourUncertainty(black, 900, still)).toBeGreaterThan(0);
    for (const lab of Object.values(COLOURS))
      for (const reference of [0, 30, 1000]) {
        const stated = colourUncertainty(lab, 900, { noise: 0, field: 0, reference });
        expect(stated).toBeGreaterThan(0);
        expect(stated).toBeLessThan(200);
      }
  });

  it('holds what a little light does that is added near black, most of all to a deep brown', () => {
    const sure = { noise: 0, field: 0, reference: 0.01 };
    const chance = chanceOf(11);
    for (const lab of [
      { l: 20, a: 11, b: 27 },
      { l: 12, a: 4, b: 8 },
    ]) {
      const light = linearFromLab(lab);
      const stated = colourUncertainty(lab, MANY, sure);
      expect(stated).toBeGreaterThan(1.15 * colourUncertainty({ l: 50, a: 11, b: 27 }, MANY, sure));
      const offs = Array.from({ length: 1000 }, () => {
        const [r, g, b] = [light.r, light.g, light.b].map((part) => part + 0.0003 * normal(chance));
        return difference(lab, labFromLinear({ r: r!, g: g!, b: b! }));
      });
      expect(offs.filter((off) => off <= stated).length).toBeGreaterThan(680);
      expect(offs.filter((off) => off <= 2 * stated).length).toBeGreaterThan(950);
    }
  });

  it('grows with each of its parts', () => {
    const some = { noise: 0.5, field: 0.4, reference: 1, tint: 0.01 };
    const grey = COLOURS['light grey']!;
    const stated = colourUncertainty(grey, 900, some);
    for (const part of ['noise', 'field', 'reference', 'tint'] as const)
      expect(
        colourUncertainty(grey, 20, { ...some, [part]: part === 'tint' ? 0.05 : 3 }),
      ).toBeGreaterThan(stated);
    expect(colourUncertainty(grey, 900, some, 0.1)).toBeGreaterThan(stated);
    expect(colourUncertainty(grey, 900, { ...some, hueOpen: 0.3 })).toBeLessThan(stated);
  });
});
