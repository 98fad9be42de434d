import { describe, expect, it } from 'vitest';
import { rectangleQuad } from '../../server/geometry/quad.ts';
import type { Candidate } from '../../server/photo/find-sheets.ts';
import { withPlacesOf } from '../../server/photo/two-looks.ts';

const at = (x: number): Candidate => ({
  corners: rectangleQuad<'photo'>(x, 10, 90, 90),
  area: 8100,
  fill: 1,
});

describe('a second look at a photo', () => {
  it('loses no place of the first: what it does not cover is unsure', () => {
    const first = { sheets: [at(0), at(100)], others: [], notes: [], unsure: [at(200), at(300)] };
    const second = { sheets: [at(102)], others: [], notes: ['word'], unsure: [at(203)] };
    const { sheets, unsure, notes } = withPlacesOf(first, second);
    expect(sheets).toEqual([at(102)]);
    expect(unsure).toEqual([at(203), at(0), at(300)]);
    expect(notes).toEqual(['word']);
  });

  it('adds nothing where it sees all that the first saw', () => {
    const seen = { sheets: [at(0)], others: [], notes: [], unsure: [at(100)] };
    const better = { sheets: [at(1), at(99)], others: [], notes: [] };
    expect(withPlacesOf(seen, better).unsure).toEqual([]);
  });
});
