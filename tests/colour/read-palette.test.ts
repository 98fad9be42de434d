import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { difference } from '../../server/colour/difference.ts';
import type { ColourError, Lab, LabImage } from '../../server/colour/lab.ts';
import type { Palette } from '../../server/colour/palette.ts';
import { readPalette } from '../../server/colour/read-palette.ts';
import { labFromHex } from '../../server/colour/spaces.ts';
import { dots, strewn, stripes } from '../pattern/prints.ts';
import type { Colours, Paint } from '../pattern/prints.ts';
import { anyLab } from './any-lab.ts';
import { chanceOf, drawn, normal, turned } from './drawn.ts';

const COLOURS = ['#f3ead8', '#2f5d62', '#e2725b', '#c9b27c', '#5b6b73'].map(
  labFromHex,
) as unknown as Colours;
const SHELL = COLOURS[0];
const error = (noise: number): ColourError => ({ noise, field: 0.5, reference: 1 });

function read(paint: Paint, noise = 1, size = 180): Palette {
  return readPalette(drawn(paint, { size, noise }), error(noise), 1);
}

/** The share that each printed colour really has, by counting the samples that are drawn. */
function truthOf(paint: Paint): Map<Lab, number> {
  const fine = 540;
  const shares = new Map<Lab, number>();
  for (let y = 0; y < fine; y++)
    for (let x = 0; x < fine; x++) {
      const lab = paint((x + 0.5) / fine, (y + 0.5) / fine);
      shares.set(lab, (shares.get(lab) ?? 0) + 1 / fine ** 2);
    }
  return shares;
}

function nearest(palette: Palette, lab: Lab): { apart: number; share: number } {
  return palette.colours
    .map((colour) => ({ apart: difference(colour.lab, lab), share: colour.share }))
    .reduce((best, next) => (next.apart < best.apart ? next : best));
}

const lines: Paint = (x, y) =>
  Math.abs(((x * 15) % 1) - 0.5) < 0.09 || Math.abs(((y * 15) % 1) - 0.5) < 0.09
    ? COLOURS[1]!
    : SHELL;

describe('printed colours', () => {
  test.each([
    ['plain paper', () => SHELL],
    ['stripes of three', stripes(7, COLOURS, 2)],
    ['small dots', dots(14, COLOURS)],
    ['blossoms of four colours', strewn(3, COLOURS)],
    ['a grid of thin lines', lines],
  ] as const)('%s: each found, none invented, shares right', (_name, paint) => {
    const truth = truthOf(paint);
    for (const noise of [0.3, 1, 2]) {
      const palette = read(paint, noise);
      for (const [lab, share] of truth) {
        const found = nearest(palette, lab);
        expect(found.apart).toBeLessThan(1.5);
        expect(Math.abs(found.share - share)).toBeLessThan(0.03);
      }
      expect(palette.colours).toHaveLength(truth.size);
      expect(palette.tonal).toBe(false);
    }
  });

  test('a small clear accent of 1.5 % is kept', () => {
    const paint: Paint = (x, y) =>
      Math.hypot(x - 0.5, y - 0.5) < 0.069 ? COLOURS[2]! : dots(8, COLOURS)(x, y);
    expect(nearest(read(paint), COLOURS[2]!).apart).toBeLessThan(1.5);
  });

  test('veins in a colour that lies between those of two leaves and the ground are found', () => {
    // Kraft, pink and blue leaves, and veins half way between kraft and pink: four pixels wide, on blue.
    const [kraft, pink, blue, vein] = [
      { l: 61, a: 10, b: 29 },
      { l: 87, a: 16, b: -6 },
      { l: 55, a: 20, b: -33 },
      { l: 77, a: 16, b: 14 },
    ] as const;
    const paint: Paint = (x, y) => {
      const [u, v] = [((4 * x) % 1) - 0.5, ((4 * y) % 1) - 0.5];
      if (Math.hypot(u, v) > 0.36) return kraft;
      if (Math.floor(4 * x) % 2 === 0) return pink;
      return Math.min(Math.abs(u), Math.abs(v)) < 0.04 ? vein : blue;
    };
    const palette = readPalette(blurred(drawn(paint, { size: 200, noise: 0.5 })), error(0.5), 1);
    expect(nearest(palette, vein).apart).toBeLessThan(4);
    expect(palette.colours).toHaveLength(4);
  });

  test('two whites, one of them cream, are two colours', () => {
    const [white, cream] = [
      { l: 95, a: 0, b: 0 },
      { l: 93, a: 0, b: 6 },
    ];
    const { colours } = read((x) => (x < 0.5 ? white : cream));
    expect(colours).toHaveLength(2);
  });

  test('two colours that the eye does not part are one', () => {
    const [one, other] = [
      { l: 60, a: 20, b: 10 },
      { l: 61, a: 21, b: 10.5 },
    ];
    expect(read((x) => (x < 0.5 ? one : other), 0.3).colours).toHaveLength(1);
  });

  test('the soft border of dark on white is not read as a grey', () => {
    const [white, black] = [
      { l: 95, a: 0, b: 2 },
      { l: 18, a: 0, b: 0 },
    ];
    const soft = blurred(drawn(dots(10, [white, black]), { size: 200 }));
    const { colours } = readPalette(soft, error(0.5), 1);
    expect(colours).toHaveLength(2);
  });
});

/** Ribbons of a ground and a second thread, woven both ways: where they differ a third colour shows. */
const woven = (ground: Lab, thread: Lab, mixed: Lab): Paint => {
  const ribbon = (at: number): boolean => Math.floor(10 * at) % 2 === 0;
  return (x, y) => (ribbon(x) !== ribbon(y) ? mixed : ribbon(x) ? ground : thread);
};

describe('ground and accents', () => {
  test.each([
    ['dots on shell', dots(8, COLOURS), SHELL],
    ['big dots that fill more than the ground', dots(4, COLOURS, 0.9), SHELL],
    ['a check, half of it the mixed colour', woven(SHELL, COLOURS[1]!, COLOURS[4]!), SHELL],
    [
      'a check whose threads come in the other order',
      woven(COLOURS[1]!, SHELL, COLOURS[2]!),
      SHELL,
    ],
    ['blossoms', strewn(6, COLOURS), SHELL],
  ] as const)('%s', (_name, paint, ground) => {
    const grounds = read(paint).colours.filter(({ role }) => role === 'ground');
    expect(grounds).toHaveLength(1);
    expect(difference(grounds[0]!.lab, ground)).toBeLessThan(1.5);
  });
});

describe('tonal papers', () => {
  const wash: Paint = (x, y) => {
    const t = 0.5 + 0.25 * Math.sin(7 * x + 3 * y) + 0.25 * Math.sin(11 * y - 4 * x + 1);
    return { l: 50 + 40 * t, a: -20 + 15 * t, b: -12 + 10 * t };
  };

  test('a wash is one tone with its range', () => {
    const palette = read(wash);
    expect(palette.tonal).toBe(true);
    expect(palette.colours.length).toBeLessThanOrEqual(2);
    const { darkest, lightest } = palette.colours[0]!.range!;
    expect(darkest.l).toBeLessThan(62);
    expect(lightest.l).toBeGreaterThan(78);
    expect(darkest.l).toBeLessThan(lightest.l);
  });

  test('woven linen is one tone', () => {
    const chance = chanceOf(4);
    const warp = Array.from({ length: 180 }, () => 5 * normal(chance));
    const weft = Array.from({ length: 180 }, () => 5 * normal(chance));
    const palette = read((x, y) => {
      const l = 68 + warp[Math.floor(x * 180)]! + weft[Math.floor(y * 180)]!;
      return { l, a: 3, b: 18 };
    });
    expect(palette.tonal).toBe(true);
    expect(palette.colours).toHaveLength(1);
  });
});

describe('for any print', () => {
  const anyPrint = fc.record({
    colours: fc.array(anyLab(), { minLength: 1, maxLength: 5 }),
    seed: fc.integer({ min: 1, max: 1000 }),
    noise: fc.double({ min: 0, max: 3, noNaN: true }),
  });
  const imageOf = ({
    colours,
    seed,
    noise,
  }: {
    colours: Lab[];
    seed: number;
    noise: number;
  }): LabImage => {
    const paint: Paint =
      colours.length === 1 ? () => colours[0]! : strewn(seed, colours as unknown as Colours);
    return drawn(paint, { size: 64, noise, seed });
  };

  test('shares add up to 1, largest first; the same seed gives the same palette', () => {
    fc.assert(
      fc.property(anyPrint, (print) => {
        const image = imageOf(print);
        const palette = readPalette(image, error(print.noise), 5);
        const shares = palette.colours.map(({ share }) => share);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
        expect([...shares].sort((p, q) => q - p)).toEqual(shares);
        expect(palette.colours.some(({ role }) => role === 'ground')).toBe(true);
        for (const { uncertainty } of palette.colours) expect(uncertainty).toBeGreaterThan(0);
        expect(readPalette(image, error(print.noise), 5)).toEqual(palette);
      }),
      { seed: 1, numRuns: 40 },
    );
  });

  test('turning the sheet does not change its colours', () => {
    fc.assert(
      fc.property(anyPrint, fc.integer({ min: 1, max: 3 }), (print, quarters) => {
        const image = imageOf(print);
        const palette = readPalette(image, error(print.noise), 1);
        const other = readPalette(turned(image, quarters), error(print.noise), 1);
        expect(other.colours).toHaveLength(palette.colours.length);
        for (const { lab, share } of palette.colours) {
          const found = nearest(other, lab);
          expect(found.apart).toBeLessThan(0.5);
          expect(Math.abs(found.share - share)).toBeLessThan(0.01);
        }
      }),
      { seed: 1, numRuns: 40 },
    );
  });
});

/** As a lens and a resize soften it: three by three, twice. */
function blurred(image: LabImage): LabImage {
  let now = image;
  for (let round = 0; round < 2; round++) {
    const { width, height, lab } = now;
    const next = new Float32Array(lab.length);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++)
        for (let axis = 0; axis < 3; axis++) {
          let [sum, count] = [0, 0];
          for (let dy = -1; dy <= 1; dy++)
            for (let dx = -1; dx <= 1; dx++) {
              if (x + dx < 0 || x + dx >= width || y + dy < 0 || y + dy >= height) continue;
              sum += lab[3 * ((y + dy) * width + x + dx) + axis]!;
              count++;
            }
          next[3 * (y * width + x) + axis] = sum / count;
        }
    now = { width, height, lab: next };
  }
  return now;
}
