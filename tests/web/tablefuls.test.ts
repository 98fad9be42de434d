import { expect, it } from 'vitest';
import type { Pad, Photo } from '../../server/contract/pads.ts';
import { tablefulsOf } from '../../web/photos/tablefuls.ts';

/** A pad of which only its photos matter. */
function padWith(...photos: readonly (readonly [arrangement: string, side: 'front' | 'back'])[]) {
  const made = photos.map(([arrangement, side], n) => ({ id: `p${n}`, arrangement, side }));
  return { sheets: [], photos: made as readonly Partial<Photo>[] } as unknown as Pad;
}

const words = (pad: Pad, underway: readonly string[] = []): string[] =>
  tablefulsOf(pad, underway).map(({ arrangement }) => arrangement);

it('keeps tables in the order of their numbers when a photo of the first came last', () => {
  const pad = padWith(['table-2', 'front'], ['table-10', 'front'], ['table-1', 'front']);
  expect(words(pad)).toEqual(['table-1', 'table-2', 'table-10']);
});

it('has a table of which all photos are still on their way in its place', () => {
  const pad = padWith(['table-2', 'front'], ['table-3', 'back']);
  expect(words(pad, ['table-1', 'table-3', 'table-4'])).toEqual([
    'table-1',
    'table-2',
    'table-3',
    'table-4',
  ]);
});

it('leaves tables of other names where they came in', () => {
  const pad = padWith(
    ['window', 'front'],
    ['table-2', 'front'],
    ['desk', 'back'],
    ['table-1', 'back'],
  );
  expect(words(pad)).toEqual(['window', 'table-1', 'desk', 'table-2']);
});

it('lays front and back of one table together', () => {
  const [first] = tablefulsOf(padWith(['table-1', 'back'], ['table-1', 'front']), []);
  expect([first!.front!.side, first!.back!.side]).toEqual(['front', 'back']);
});
