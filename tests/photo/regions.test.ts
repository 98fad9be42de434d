import { describe, expect, it } from 'vitest';
import { regionsOf } from '../../server/photo/regions.ts';
import type { Mask } from '../../server/photo/regions.ts';
import { spreadOut, withoutGaps, withoutThin } from '../../server/photo/spread.ts';

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

describe('the regions of a mask', () => {
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
