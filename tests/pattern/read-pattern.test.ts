import { describe, expect, test } from 'vitest';
import { drawn, turned } from '../colour/drawn.ts';
import { DEEP, QUIET, SHEET, SHELL, dots, strewn, stripes, traitsOf, triangles } from './prints.ts';

const drawing = { size: 240, noise: 1 };
const plain = drawn(() => SHELL[0], drawing);

describe('repeat', () => {
  test.each([6, 9, 12.5, 17])(
    'dots, %d across a sheet, repeat to a tenth of a millimetre',
    (count) => {
      const { repeat } = traitsOf(drawn(dots(count, SHELL), drawing));
      expect(repeat).not.toBeNull();
      expect(Math.abs(repeat! - SHEET / count)).toBeLessThan(0.1);
    },
  );

  test('stripes repeat across only', () => {
    const { repeat } = traitsOf(drawn(stripes(8, SHELL, 2), drawing));
    expect(Math.abs(repeat! - SHEET / 8)).toBeLessThan(0.1);
  });

  test('narrow stripes that come again midway between two fields are not told to come again at the second time', () => {
    // 128 fields a side, 5.02 repeats: one every 25.5 fields.
    const narrow = drawn(
      (x) =>
        SHELL[(x * 5.02) % 1 < 0.05 ? 1 : (x * 5.02) % 1 > 0.5 && (x * 5.02) % 1 < 0.56 ? 2 : 0]!,
      drawing,
    );
    expect(traitsOf(narrow).repeat).toBeCloseTo(SHEET / 5.02, 0);
  });

  test.each([
    ['plain paper', plain],
    ['strewn blossoms', drawn(strewn(3, SHELL), drawing)],
    ['a sheet of two halves', drawn((x) => SHELL[x < 0.5 ? 0 : 1]!, drawing)],
  ])('%s has no repeat', (_name, image) => {
    expect(traitsOf(image).repeat).toBeNull();
  });

  test('a quarter turn does not change it', () => {
    const image = drawn(stripes(7, DEEP), drawing);
    expect(traitsOf(turned(image, 1)).repeat).toBeCloseTo(traitsOf(image).repeat!, 3);
  });
});

describe('direction', () => {
  test.each([
    ['plain paper', plain, 'none'],
    ['dots', drawn(dots(9, SHELL), drawing), 'none'],
    ['strewn blossoms', drawn(strewn(5, SHELL), drawing), 'none'],
    ['stripes', drawn(stripes(9, SHELL), drawing), 'two-way'],
    ['stripes of three colours', drawn(stripes(9, SHELL, 2), drawing), 'two-way'],
    ['standing triangles', drawn(triangles(7, SHELL), drawing), 'one-way'],
  ])('%s', (_name, image, direction) => {
    expect(traitsOf(image).direction).toBe(direction);
  });

  test('triangles on their side run along the other line', () => {
    const image = drawn(triangles(7, SHELL), drawing);
    expect(traitsOf(image).up).toBe(0);
    expect(traitsOf(turned(image, 1))).toMatchObject({ direction: 'one-way', up: 90 });
    expect(traitsOf(turned(image, 2))).toMatchObject({ direction: 'one-way', up: 0 });
  });
});

describe('scale', () => {
  test.each([5, 8, 12])('dots, %d across, have the size of a dot', (count) => {
    const { scale } = traitsOf(drawn(dots(count, SHELL, 0.5), { size: 360, noise: 1 }));
    expect(scale / (SHEET / count / 2)).toBeGreaterThan(0.9);
    expect(scale / (SHEET / count / 2)).toBeLessThan(1.1);
  });

  test('plain paper counts as one shape as wide as the sheet', () => {
    expect(traitsOf(plain).scale).toBeCloseTo(SHEET, 6);
  });
});

describe('busyness', () => {
  test('rises with the number of shapes', () => {
    const busy = [5, 8, 12, 18].map(
      (count) => traitsOf(drawn(dots(count, SHELL), drawing)).busyness,
    );
    expect([...busy].sort((p, q) => p - q)).toEqual(busy);
    expect(traitsOf(plain).busyness).toBe(0);
    for (const value of busy) expect(value).toBeLessThan(1);
  });

  test('rises with the number of colours', () => {
    const [two, three] = [1, 2].map(
      (accents) => traitsOf(drawn(stripes(24 / (accents + 1), SHELL, accents), drawing)).busyness,
    );
    expect(three!).toBeGreaterThan(two!);
  });

  test('does not depend on which colours they are', () => {
    const [loud, quiet] = [SHELL, QUIET].map(
      (colours) => traitsOf(drawn(dots(9, colours), drawing)).busyness,
    );
    expect(quiet!).toBeCloseTo(loud!, 1);
  });
});
