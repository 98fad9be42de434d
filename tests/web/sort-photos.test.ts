import { expect, test } from 'vitest';
import type { Pad } from '../../server/contract/pads.ts';
import { sortPhotos } from '../../web/photos/sort-photos.ts';
import { berthsFor } from '../../web/photos/tablefuls.ts';

const empty = { photos: [], sheets: [] } as unknown as Pad;

/** Where photos of those names and times go on a pad without photos: `table-1/front` by name. */
function laid(photos: readonly (readonly [name: string, taken: number])[]): Record<string, string> {
  const { inTurn } = sortPhotos(photos.map(([name, lastModified]) => ({ name, lastModified })));
  const berths = berthsFor(inTurn, 'in-turn', empty, []);
  return Object.fromEntries(
    inTurn.map(({ photo }, n) => [photo.name, `${berths[n]!.arrangement}/${berths[n]!.side}`]),
  );
}

test('the words front and back in the names win over time and order', () => {
  expect(
    laid([
      ['windfall-back.jpg', 1],
      ['windfall-front.jpg', 2],
    ]),
  ).toEqual({ 'windfall-front.jpg': 'table-1/front', 'windfall-back.jpg': 'table-1/back' });
});

test('photos whose names agree but for the face lie on one table', () => {
  expect(
    laid([
      ['b Fronts.jpg', 1],
      ['a Backs.jpg', 2],
      ['a Fronts.jpg', 3],
      ['b Backs.jpg', 4],
    ]),
  ).toEqual({
    'b Fronts.jpg': 'table-1/front',
    'b Backs.jpg': 'table-1/back',
    'a Fronts.jpg': 'table-2/front',
    'a Backs.jpg': 'table-2/back',
  });
});

test('f and b at the end count as words only together', () => {
  expect(
    laid([
      ['pad_b.jpg', 1],
      ['pad_f.jpg', 2],
    ]),
  ).toEqual({ 'pad_f.jpg': 'table-1/front', 'pad_b.jpg': 'table-1/back' });
  expect(
    laid([
      ['pad_b.jpg', 1],
      ['pad_a.jpg', 2],
    ]),
  ).toEqual({ 'pad_b.jpg': 'table-1/front', 'pad_a.jpg': 'table-1/back' });
});

test('else the time tells, and where the times are equal the order of choosing', () => {
  expect(
    laid([
      ['2.jpg', 20],
      ['9.jpg', 10],
    ]),
  ).toEqual({ '9.jpg': 'table-1/front', '2.jpg': 'table-1/back' });
  expect(
    laid([
      ['9.jpg', 10],
      ['2.jpg', 10],
    ]),
  ).toEqual({ '9.jpg': 'table-1/front', '2.jpg': 'table-1/back' });
});
