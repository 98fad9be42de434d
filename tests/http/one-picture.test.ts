import { expect, test } from 'vitest';
import type { Lab } from '../../server/colour/lab.ts';
import type { Quad } from '../../server/geometry/points.ts';
import { picturesAsOne } from '../../server/http/one-picture.ts';
import type { PhotoRow } from '../../server/store/rows.ts';

const GREYS = [90, 60, 30].map((l) => ({ l, a: 0, b: 0 }));
const OTHER_GREYS = [85, 60, 30].map((l) => ({ l, a: 0, b: 0 }));

function square(x: number): Quad<'photo'> {
  const [left, right] = [x, x + 40];
  return [
    { x: left, y: 100 },
    { x: right, y: 100 },
    { x: right, y: 140 },
    { x: left, y: 140 },
  ];
}

/** A copy of one picture, tied by scraps of these colours, or by none; the scraps a little aside. */
function copyOf(id: string, colours: readonly Lab[] | null, aside = 0): PhotoRow {
  return {
    id,
    pad: null,
    face: null,
    arrangement: 'cardstock',
    hash: 'one',
    picture: 'one',
    width: 4000,
    height: 3000,
    white: { kind: 'none', corners: null },
    ...(colours === null
      ? {}
      : {
          chips: {
            tie: 'tied',
            scraps: colours.map((lab, at) => ({ corners: square(500 * at + aside), lab })),
          },
        }),
    notes: [],
    createdAt: '',
    revision: 1,
  };
}

test.each([
  ['neither is tied', null, null, 0, true],
  ['both are tied by the same scraps, touched a little aside', GREYS, GREYS, 5, true],
  ['one is tied', GREYS, null, 0, false],
  ['they are tied to pads whose scraps look otherwise', GREYS, OTHER_GREYS, 0, false],
  ['one is tied by fewer scraps', GREYS, GREYS.slice(1), 500, false],
  ['other things were taken for the scraps', GREYS, GREYS, 200, false],
])('two copies of one picture, where %s', (_, p, q, aside, isOne) => {
  const photos = [copyOf('p', p), copyOf('q', q, aside)];
  const name = picturesAsOne(new Map(photos.map((photo) => [photo.id, photo])));
  expect(name('p') === name('q')).toBe(isOne);
});
