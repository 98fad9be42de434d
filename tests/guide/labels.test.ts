import { describe, expect, test } from 'vitest';
import { catalogue } from '../../server/layouts/catalogue.ts';
import { boundsOf } from '../../server/geometry/bounds.ts';
import type { Bounds } from '../../server/geometry/bounds.ts';
import { contains } from '../../server/geometry/polygon.ts';
import { factsOf } from '../../server/guide/facts.ts';
import { guidePages } from '../../server/guide/guide-pages.ts';
import { labelPlaces } from '../../server/guide/piece-label.ts';
import { keptOnSheet } from '../../server/guide/laid.ts';
import type { LaidPiece } from '../../server/guide/laid.ts';
import { CUT, PAPER } from '../../server/guide/look.ts';
import { lyingOf } from '../../server/guide/slot-pages.ts';
import { cornersOf, flat } from './flat.ts';
import type { FlatMark } from './flat.ts';
import { guideWorld, layoutsOf } from './world.ts';

const WORLDS = [
  ['all our US layouts', guideWorld(layoutsOf('us'), 'in')],
  ['all our A6 layouts', guideWorld(layoutsOf('a6'), 'mm')],
  ...catalogue
    .filter(({ layers }) => layers.some(({ shape }) => shape.kind === 'corners'))
    .map((layout) => [`${layout.id} alone`, guideWorld([layout])] as const),
] as const;

describe.each(WORLDS)('the labels of the pieces of %s', (_, ask) => {
  test('hide no other label and no number of a cut in print', () => {
    let seen = 0;
    const clashes = guidePages(ask).flatMap(({ name, marks }) => {
      const all = flat(marks);
      const plates = all.filter(isPlate).map((one) => boundsOf(cornersOf(one)));
      const numbers = all.filter(isNumber).map((one) => boundsOf(cornersOf(one)));
      seen += plates.length;
      return plates.flatMap((plate, at) =>
        [...plates.slice(at + 1), ...numbers]
          .filter((other) => overlap(plate, other) > 0.05)
          .map((other) => `${name}: ${JSON.stringify(plate)} and ${JSON.stringify(other)}`),
      );
    });
    expect(clashes).toEqual([]);
    expect(seen).toBeGreaterThan(0);
  });

  test('stand clear of the lines along which a base is scored', () => {
    let seen = 0;
    const crossed = guidePages(ask).flatMap(({ name, marks }) => {
      const all = flat(marks);
      const plates = all.filter(isPlate).map((one) => boundsOf(cornersOf(one)));
      const scores = all.filter(isScore).map((one) => boundsOf(cornersOf(one)));
      seen += scores.length;
      return scores
        .filter((score) => plates.some((plate) => overlap(plate, score) > -0.5))
        .map((score) => `${name}: ${JSON.stringify(score)}`);
    });
    expect(crossed).toEqual([]);
    expect(seen).toBeGreaterThan(0);
  });

  test('lie each on its own piece on the screen', () => {
    const facts = factsOf(ask);
    const scale = 140 / 152.4;
    for (const one of facts.slots) {
      const { turnOf, showsOther } = lyingOf(facts, one);
      const pieces = one.slot.pieces.map((placed): LaidPiece => ({
        placed,
        turn: turnOf(placed),
        showsOther: showsOther(placed),
      }));
      for (const [at, place] of labelPlaces(pieces, scale, []).entries()) {
        const kept = keptOnSheet(pieces[at]!).map(({ x, y }) => ({ x: scale * x, y: scale * y }));
        const { x, y, width, height } = place;
        for (const [across, down] of [
          [0, 0],
          [1, 0],
          [1, 1],
          [0, 1],
        ] as const)
          expect(contains(kept, { x: x + across * width, y: y + down * height })).toBe(true);
      }
    }
  });
});

/** The white plate under the words of a label. */
function isPlate({ mark }: FlatMark): boolean {
  return mark.kind === 'area' && mark.fill === PAPER && mark.opacity === 0.92;
}

/** A dotted line on a sheet of cardstock. */
function isScore({ mark }: FlatMark): boolean {
  return mark.kind === 'line' && mark.dashes?.join() === '0.5,1.4';
}

/** The disc under the number of a cut. */
function isNumber({ mark }: FlatMark): boolean {
  return mark.kind === 'area' && mark.fill === CUT;
}

/** The lesser of what two boxes share across and down, in mm; below 0 where they are apart. */
function overlap(a: Bounds, b: Bounds): number {
  return Math.min(
    Math.min(a.right, b.right) - Math.max(a.left, b.left),
    Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top),
  );
}
