import { describe, expect, it } from 'vitest';
import type { Quad } from '../../server/geometry/points.ts';
import { notesOnRim } from '../../server/photo/notes-on-left-out.ts';

const picture = { width: 1000, height: 750 };

function box(left: number, top: number, right: number, bottom: number): Quad<'photo'> {
  return [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ];
}

describe('an unsure place that ends where the picture does', () => {
  it.each([
    ['left', box(1, 100, 301, 400)],
    ['right', box(700, 100, 999, 400)],
    ['above', box(100, -2, 400, 298)],
    ['below', box(100, 450, 400, 749)],
  ])('is told %s', (_, place) => {
    const [note, ...more] = notesOnRim([place, box(400, 200, 600, 400)], picture);
    // The words by which the benchmark knows that a cut-off paper was told.
    expect(note).toMatch(/^One unsure place ends where the picture does.*outside the picture/);
    expect(more).toEqual([]);
  });

  it.each([
    ['left', box(1, 100, 41, 400)],
    ['right', box(959, 100, 999, 400)],
    ['above', box(100, 1, 400, 41)],
    ['below', box(100, 709, 400, 749)],
  ])('is told as a narrow strip %s, where it ends with the last pixel', (_, place) => {
    expect(notesOnRim([place], picture)).toHaveLength(1);
  });

  it('is counted with others', () => {
    const places = [box(700, 10, 1001, 310), box(698, 400, 1000, 700)];
    expect(notesOnRim(places, picture).join()).toMatch(/^2 unsure places/);
  });

  it('is not told where table shows beyond it, or only one corner touches the rim', () => {
    const turned: Quad<'photo'> = [
      { x: 0, y: 300 },
      { x: 210, y: 90 },
      { x: 420, y: 300 },
      { x: 210, y: 510 },
    ];
    expect(notesOnRim([box(10, 100, 310, 400), turned], picture)).toEqual([]);
    expect(notesOnRim([], picture)).toEqual([]);
  });
});
