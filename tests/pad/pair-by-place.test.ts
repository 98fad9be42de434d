import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PhotoPoint, Quad } from '../../server/geometry/points.ts';
import { pairByPlace } from '../../server/pad/pair-by-place.ts';
import type { Placed } from '../../server/pad/pair-by-place.ts';
import { chanceOf } from '../colour/drawn.ts';
import { square } from './sides.ts';

/** Sheets of 300 pixels laid in rows with a gap of 40, as a hand lays them: each a little off. */
function laid(count: number, columns: number, seed: number, prefix: string): Placed[] {
  const chance = chanceOf(seed);
  return Array.from({ length: count }, (_, index) => ({
    id: `${prefix}${index}`,
    corners: square(
      200 + (index % columns) * 340 + 24 * (chance() - 0.5),
      150 + Math.floor(index / columns) * 340 + 24 * (chance() - 0.5),
      300,
    ),
  }));
}

function moved(items: readonly Placed[], move: (point: PhotoPoint) => PhotoPoint): Placed[] {
  return items.map((item) => ({
    ...item,
    corners: item.corners.map(move) as unknown as Quad<'photo'>,
  }));
}

const fronts = laid(12, 4, 1, 'f');
const backs = laid(12, 4, 2, 'b');
const inPlace = fronts.map((_, index) => ({ front: `f${index}`, back: `b${index}` }));

describe('pairing by place', () => {
  test('turned over in place, twelve sheets pair up', () => {
    expect(pairByPlace(fronts, backs)).toEqual(inPlace);
  });

  test.each([
    ['to the side and back', ({ x, y }: PhotoPoint) => ({ x: 0.85 * x + 260, y: 0.85 * y - 90 })],
    ['turned a little', ({ x, y }: PhotoPoint) => ({ x: x - 0.08 * y, y: y + 0.08 * x })],
    ['tilted', ({ x, y }: PhotoPoint) => ({ x: x / (1 + 1.2e-4 * y), y: y / (1 + 1.2e-4 * y) })],
  ])('the camera moved %s', (_name, move) => {
    expect(pairByPlace(fronts, moved(backs, move))).toEqual(inPlace);
  });

  test('a back that was not found leaves its front alone', () => {
    const some = backs.filter(({ id }) => id !== 'b5');
    expect(pairByPlace(fronts, some)).toEqual(
      inPlace.map((pair) => (pair.back === 'b5' ? { ...pair, back: null } : pair)),
    );
  });

  test('a back without a front comes last', () => {
    const pairs = pairByPlace(fronts.slice(1), backs);
    expect(pairs).toHaveLength(12);
    expect(pairs.at(-1)).toEqual({ front: null, back: 'b0' });
  });

  test('no backs at all, or no fronts', () => {
    expect(pairByPlace(fronts.slice(0, 2), [])).toEqual([
      { front: 'f0', back: null },
      { front: 'f1', back: null },
    ]);
    expect(pairByPlace([], backs.slice(0, 1))).toEqual([{ front: null, back: 'b0' }]);
    expect(pairByPlace([], [])).toEqual([]);
  });

  test('each item comes once, whatever lies where and in whatever order', () => {
    const place = fc.record({
      x: fc.integer({ max: 3000, min: 0 }),
      y: fc.integer({ max: 2000, min: 0 }),
    });
    const items = (prefix: string): fc.Arbitrary<Placed[]> =>
      fc
        .array(place, { maxLength: 9 })
        .map((list) =>
          list.map(({ x, y }, i) => ({ id: `${prefix}${i}`, corners: square(x, y, 300) })),
        );
    fc.assert(
      fc.property(items('f'), items('b'), (some, others) => {
        const pairs = pairByPlace(some, others);
        const ids = pairs.flatMap(({ front, back }) => [front, back]).filter((id) => id !== null);
        expect(ids.sort()).toEqual([...some, ...others].map(({ id }) => id).sort());
        const again = pairByPlace([...some].reverse(), [...others].reverse());
        const key = (list: typeof pairs): string[] =>
          list.map(({ front, back }) => `${front}|${back}`).sort();
        if (distinct(some) && distinct(others)) expect(key(again)).toEqual(key(pairs));
      }),
      { seed: 1 },
    );
  });
});

/** True when no two items lie so alike that either order is right. */
function distinct(items: readonly Placed[]): boolean {
  const spots = items.map(({ corners }) => `${corners[0].x} ${corners[0].y}`);
  return new Set(spots).size === spots.length;
}
