import { describe, expect, it } from 'vitest';
import { classSet } from '../../server/cutting/class-set.ts';
import { cutScheme } from '../../server/cutting/cut-scheme.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { INCHES, piece } from './worlds.ts';

/** Two sheets cut alike and one cut otherwise. */
const pieces = [
  piece(1, 'panel', '5 x 5 in'),
  piece(2, 'panel', '5 x 5 in'),
  piece(3, 'tall', '4 x 6 in'),
];
const scheme = cutScheme(pieces, parseSize('6 x 6 in'), INCHES);

describe('a class set', () => {
  it('takes every slot once for each person, in stacks no higher than the limit', () => {
    const set = classSet(scheme, 5, 4);
    expect(set.sheets).toBe(15);
    // Ten sheets cut alike: 4 + 4 + 2; five of the other: 4 + 1.
    expect(set.stacks.map(({ sheets }) => sheets).sort()).toEqual([1, 2, 4, 4, 4]);
    for (const { id } of scheme.slots) {
      const sheets = set.stacks.flatMap(({ of }) => of).filter(({ slot }) => slot === id);
      expect(sheets.reduce((sum, one) => sum + one.sheets, 0)).toBe(5);
    }
  });

  it('for one person is the batch itself', () => {
    expect(classSet(scheme, 1, 3)).toMatchObject({ people: 1, sheets: 3 });
    expect(classSet(scheme, 1, 3).stacks).toHaveLength(2);
  });
});
