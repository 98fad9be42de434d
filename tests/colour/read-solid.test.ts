import { describe, expect, test } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import { readSolid } from '../../server/colour/read-solid.ts';
import { labFromLinear, linearFromLab } from '../../server/colour/spaces.ts';
import { chanceOf, drawn } from './drawn.ts';

const TEAL: Lab = { l: 38, a: -24, b: -10 };
const CARD: Lab = { l: 95, a: 0, b: -2 };
const error = { noise: 1, field: 0.5, reference: 0.8 };

describe('cardstock', () => {
  test('is read to a few tenths', () => {
    const { lab, uncertainty } = readSolid(
      drawn(() => TEAL, { size: 60, noise: 1 }),
      error,
    );
    expect(difference(lab, TEAL)).toBeLessThan(0.2);
    expect(uncertainty).toBeGreaterThan(0.3);
    expect(uncertainty).toBeLessThan(1.5);
  });

  test('a shadow along one edge and some dust do not change it', () => {
    const chance = chanceOf(3);
    const dust = Array.from({ length: 12 }, () => [chance(), chance()] as const);
    const image = drawn(
      (x, y) => {
        if (dust.some(([u, v]) => Math.hypot(x - u, y - v) < 0.02)) return { l: 80, a: 0, b: 0 };
        return x < 0.05 ? { ...TEAL, l: 20 } : TEAL;
      },
      { size: 60, noise: 1 },
    );
    expect(difference(readSolid(image, error).lab, TEAL)).toBeLessThan(0.3);
  });

  test('white cardstock is not taken for bare card', () => {
    const { lab } = readSolid(
      drawn(() => CARD, { size: 60, noise: 1 }),
      error,
    );
    expect(difference(lab, CARD)).toBeLessThan(0.2);
  });
});

describe('an ink smear on white card', () => {
  const smear = (x: number, y: number): Lab => {
    const inside = Math.hypot((x - 0.5) / 0.42, (y - 0.5) / 0.3) < 1;
    return inside ? { ...TEAL, l: TEAL.l + 20 * (x - 0.5) } : CARD;
  };

  test('only what is covered counts', () => {
    const solid = readSolid(drawn(smear, { size: 80, noise: 1 }), error);
    expect(difference(solid.lab, TEAL)).toBeLessThan(1);
  });

  test('its range is told', () => {
    const { darkest, lightest } = readSolid(drawn(smear, { size: 80, noise: 1 }), error);
    expect(darkest.l).toBeLessThan(TEAL.l - 4);
    expect(lightest.l).toBeGreaterThan(TEAL.l + 4);
    expect(lightest.l).toBeLessThan(TEAL.l + 14);
  });
});

describe('a solid that shines', () => {
  // Shafer 1985, doi:10.1002/col.5080100409: mirrored light lies on top of the colour's own, in linear light.
  const shone = (lab: Lab, light: number): Lab => {
    const { r, g, b } = linearFromLab(lab);
    return labFromLinear({ r: r + light, g: g + light, b: b + light });
  };
  /** Card under ink of a thickness: Beer's law, channel by channel. */
  const thin = (ink: Lab, thick: number): Lab => {
    const [card, full] = [linearFromLab(CARD), linearFromLab(ink)];
    const through = (c: 'r' | 'g' | 'b'): number => card[c] * (full[c] / card[c]) ** thick;
    return labFromLinear({ r: through('r'), g: through('g'), b: through('b') });
  };
  const smeared = (inside: (x: number, y: number) => Lab) => (x: number, y: number) =>
    Math.hypot((x - 0.5) / 0.42, (y - 0.5) / 0.3) < 1 ? inside(x, y) : CARD;
  const lobe = (x: number, y: number): number =>
    0.5 * Math.exp(-(((x - 0.45) / 0.16) ** 2) - ((y - 0.5) / 0.07) ** 2);
  const read = (colour: (x: number, y: number) => Lab): boolean =>
    readSolid(drawn(colour, { size: 80, noise: 1 }), error).glossy;
  const INKS: readonly Lab[] = [
    { l: 40, a: -15, b: -12 },
    { l: 57, a: 46, b: 34 },
    { l: 30, a: 20, b: -35 },
  ];

  test('a wet smear is told from a thin one', () => {
    for (const ink of INKS) {
      expect(read(smeared((x, y) => shone(ink, lobe(x, y))))).toBe(true);
      expect(read(smeared((x) => thin(ink, 0.35 + 0.9 * x)))).toBe(false);
    }
  });

  test('glossy cardstock is told from matt, and a grey smear by what is brighter than its card', () => {
    expect(read((x, y) => shone(TEAL, lobe(x, y)))).toBe(true);
    expect(read(() => TEAL)).toBe(false);
    const grey: Lab = { l: 40, a: 0, b: -1 };
    expect(read(smeared((x, y) => shone(grey, 3 * lobe(x, y))))).toBe(true);
    expect(read(smeared((x) => thin(grey, 0.35 + 0.9 * x)))).toBe(false);
  });

  test('one small glint is dust, and does not move the colour', () => {
    const glint = (x: number, y: number): Lab =>
      Math.hypot(x - 0.5, y - 0.5) < 0.04 ? shone(TEAL, 0.8) : TEAL;
    const solid = readSolid(drawn(glint, { size: 80, noise: 1 }), error);
    expect(solid.glossy).toBe(false);
    expect(difference(solid.lab, TEAL)).toBeLessThan(0.3);
  });
});
