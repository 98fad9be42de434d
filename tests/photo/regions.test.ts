import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { regionsOf } from '../../server/photo/regions.ts';
import type { Mask } from '../../server/photo/regions.ts';
import {
  filledWithoutThin,
  spreadOut,
  withoutGaps,
  withoutThin,
} from '../../server/photo/spread.ts';

/** `#` is a thing, all else is none. */
function mask(...rows: readonly string[]): Mask {
  return {
    width: rows[0]!.length,
    height: rows.length,
    of: Uint8Array.from(rows.join(''), (mark) => Number(mark === '#')),
  };
}

const shown = ({ width, height, of }: Mask): string[] =>
  Array.from({ length: height }, (_, y) =>
    Array.from(of.subarray(y * width, (y + 1) * width), (value) => (value === 1 ? '#' : '.')).join(
      '',
    ),
  );

/** Masks of up to 80 x 40 pixels, from nearly empty to nearly full. */
const masks = fc
  .record({
    width: fc.integer({ min: 1, max: 80 }),
    height: fc.integer({ min: 1, max: 40 }),
    full: fc.constantFrom(1, 30, 500, 970, 999),
    at: fc.infiniteStream(fc.integer({ min: 0, max: 999 })),
  })
  .map(({ width, height, full, at }): Mask => {
    const of = Uint8Array.from({ length: width * height }, () => Number(at.next().value < full));
    return { width, height, of };
  });

/** All pixels that can be walked to from one, one step after the other. */
function walked({ width, height, of }: Mask, start: number): number[] {
  const seen = new Set([start]);
  for (const pixel of seen) {
    const x = pixel % width;
    const beside = [
      ...(x > 0 ? [pixel - 1] : []),
      ...(x < width - 1 ? [pixel + 1] : []),
      ...(pixel >= width ? [pixel - width] : []),
      ...(pixel < width * (height - 1) ? [pixel + width] : []),
    ];
    for (const next of beside) if (of[next] === 1) seen.add(next);
  }
  return [...seen].sort((p, q) => p - q);
}

describe('the regions of a mask', () => {
  it('are what can be walked to from each of their pixels, row by row', () => {
    fc.assert(
      fc.property(masks, (mask) => {
        const regions = regionsOf(mask, 1);
        const sum = regions.reduce((total, { pixels }) => total + pixels.length, 0);
        expect(sum).toBe(mask.of.reduce((total, value) => total + value, 0));
        for (const { pixels, left, top, right, bottom } of regions) {
          expect([...pixels]).toEqual(walked(mask, pixels[0]!));
          const columns = [...pixels].map((pixel) => pixel % mask.width);
          const rows = [...pixels].map((pixel) => Math.floor(pixel / mask.width));
          expect([left, top, right, bottom]).toEqual([
            Math.min(...columns),
            Math.min(...rows),
            Math.max(...columns),
            Math.max(...rows),
          ]);
        }
      }),
    );
  });

  it('are joined by sides, not by corners, and come largest first', () => {
    const regions = regionsOf(mask('##..#', '##..#', '..#..', '#....'), 1);
    expect(regions.map(({ pixels }) => pixels.length)).toEqual([4, 2, 1, 1]);
    const [first, second] = regions;
    expect([first!.left, first!.top, first!.right, first!.bottom]).toEqual([0, 0, 1, 1]);
    expect([second!.left, second!.top, second!.right, second!.bottom]).toEqual([4, 0, 4, 1]);
  });

  it('do not go on from the end of a row to the start of the next', () => {
    expect(regionsOf(mask('..#', '#..'), 1)).toHaveLength(2);
  });

  it('are left out when they are smaller than asked', () => {
    expect(regionsOf(mask('##.#'), 2)).toHaveLength(1);
  });
});

describe('what is thin in a mask', () => {
  // A word of the packed mask holds 32 pixels: these lie across the border of two.
  const pad = (row: string): string => '.'.repeat(30) + row;

  it('is taken away, and what stays keeps its outline', () => {
    const before = mask(...['.....#..', '.###.#..', '.###.#..', '.###....', '........'].map(pad));
    const after = ['........', '.###....', '.###....', '.###....', '........'].map(pad);
    expect(shown(withoutThin(before, 1))).toEqual(after);
  });

  it('is filled where it is a gap', () => {
    const before = mask(
      ...['..........', '..##.##...', '..##.##...', '..##.##...', '..........'].map(pad),
    );
    expect(shown(withoutGaps(before, 1))[2]).toBe(pad('..#####...'));
  });

  it('is what a square drawn over it pixel by pixel does not fit into', () => {
    fc.assert(
      fc.property(masks, fc.integer({ min: 0, max: 40 }), (mask, by) => {
        const grown = spreadByPixel(mask, by);
        expect(spreadOut(mask, by).of).toEqual(grown.of);
        const filled = outward(spreadByPixel(outward(grown), by));
        expect(withoutGaps(mask, by).of).toEqual(filled.of);
        const thinned = spreadByPixel(outward(spreadByPixel(outward(mask), by)), by);
        expect(withoutThin(mask, by).of).toEqual(thinned.of);
        const both = spreadByPixel(outward(spreadByPixel(outward(filled), by)), by);
        expect(filledWithoutThin(mask, by).of).toEqual(both.of);
      }),
    );
  });

  it('spreads from the rim of the picture without a hole', () => {
    for (const row of ['#' + '.'.repeat(70), '.'.repeat(70) + '#']) {
      const column = mask(...Array.from(row));
      for (let by = 0; by <= 71; by++) {
        expect(spreadOut(mask(row), by).of).toEqual(spreadByPixel(mask(row), by).of);
        expect(spreadOut(column, by).of).toEqual(spreadByPixel(column, by).of);
      }
    }
  });

  it('spreads over a square around each pixel, not past the ends of a row', () => {
    expect(shown(spreadOut(mask('....', '#...', '....', '....'), 1))).toEqual([
      '##..',
      '##..',
      '##..',
      '....',
    ]);
    expect(shown(spreadOut(mask(pad('.#.')), 1))).toEqual([pad('###')]);
  });
});

function spreadByPixel({ width, height, of }: Mask, by: number): Mask {
  const out = new Uint8Array(of.length);
  of.forEach((value, pixel) => {
    if (value === 0) return;
    const [x, y] = [pixel % width, Math.floor(pixel / width)];
    for (let row = Math.max(0, y - by); row <= Math.min(height - 1, y + by); row++)
      out.fill(1, row * width + Math.max(0, x - by), row * width + Math.min(width, x + by + 1));
  });
  return { width, height, of: out };
}

const outward = (mask: Mask): Mask => ({ ...mask, of: mask.of.map((value) => 1 - value) });
