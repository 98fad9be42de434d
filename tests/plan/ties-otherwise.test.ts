import { expect, test } from 'vitest';
import { createColourTable } from '../../server/plan/coordination/look.ts';
import type { Look } from '../../server/plan/coordination/look.ts';
import { lookOfSide } from '../../server/plan/coordination/shown.ts';
import { tieOtherwise } from '../../server/plan/coordination/ties-otherwise.ts';
import { side } from './worlds.ts';
import type { Named } from './worlds.ts';

/** A paper in one colour; `solid` for a cardstock. Rules of the trade: common practice, no source. */
function look(name: Named, solid = false): Look {
  const table = createColourTable();
  const { palette, pattern } = side(name, { [name]: 1 });
  return {
    ...lookOfSide(
      palette,
      pattern,
      palette.colours.map((colour) => table.add(colour)),
      1,
    ),
    solid,
  };
}

test.each([
  [
    'a neutral ground',
    look('white'),
    look('teal'),
    /^The .* ground of A leaves the colours to B\.$/,
  ],
  ['also on the other side', look('violet'), look('white'), /ground of B leaves the colours to A/],
  ['warm against cool', look('teal'), look('coral'), /^The warm .* of B stands .* cool .* of A\.$/],
  ['cardstock that sets off', look('coral', true), look('lemon'), /^A is a plain .* sets B off\.$/],
  ['light against dark', look('lemon'), look('red'), /^The lighter ground of A stands/],
  ['one depth', look('red'), look('nearlyRed'), /^The grounds of A and B are of one depth\.$/],
])('two looks without a common colour: %s', (_, a, b, said) => {
  expect(tieOtherwise(a, b, { a: 'A', b: 'B' })).toMatch(said);
});
