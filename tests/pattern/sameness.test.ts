import { describe, expect, test } from 'vitest';
import { SAME_PATTERN, sameness } from '../../server/pattern/sameness.ts';
import { drawn, turned } from '../colour/drawn.ts';
import { DEEP, QUIET, SHELL, dots, strewn, stripes, traitsOf, triangles } from './prints.ts';
import type { Colours, Paint } from './prints.ts';

const PRINTS: Record<string, (colours: Colours) => Paint> = {
  'large dots': (colours) => dots(6, colours),
  'small dots': (colours) => dots(11, colours),
  stripes: (colours) => stripes(8, colours, 2),
  triangles: (colours) => triangles(7, colours),
  blossoms: (colours) => strewn(3, colours),
  'other blossoms': (colours) => strewn(4, colours),
};
const names = Object.keys(PRINTS);
const loud = new Map(
  names.map((name) => [name, traitsOf(drawn(PRINTS[name]!(SHELL), { size: 240, noise: 1 }))]),
);

describe('sameness of patterns', () => {
  test.each(names)('%s in other colours, turned, under a slope of light, is the same', (name) => {
    for (const [turns, colours] of [DEEP, QUIET].entries()) {
      const paint = PRINTS[name]!(colours);
      const lit: Paint = (x, y) => {
        const { l, a, b } = paint(x, y);
        return { l: l * (0.9 + 0.1 * x), a, b };
      };
      const image = turned(drawn(lit, { size: 240, noise: 1, seed: 7 }), turns + 1);
      expect(sameness(loud.get(name)!, traitsOf(image))).toBeGreaterThan(SAME_PATTERN + 0.1);
    }
  });

  test('different patterns are not', () => {
    for (const [i, one] of names.entries())
      for (const other of names.slice(i + 1)) {
        const alike = sameness(loud.get(one)!, loud.get(other)!);
        expect(alike, `${one} and ${other}`).toBeLessThan(SAME_PATTERN - 0.05);
        expect(sameness(loud.get(other)!, loud.get(one)!)).toBeCloseTo(alike, 6);
      }
  });

  test('a pattern is the same as itself', () => {
    for (const traits of loud.values()) expect(sameness(traits, traits)).toBeCloseTo(1, 6);
  });
});
