import type { Network } from '../../server/plan/network/network.ts';

/** Flows between the twelve plants of nug12 in QAPLIB; smaller problems take the first of them. */
export const FLOWS: readonly (readonly number[])[] = [
  [0, 5, 2, 4, 1, 0, 0, 6, 2, 1, 1, 1],
  [5, 0, 3, 0, 2, 2, 2, 0, 4, 5, 0, 0],
  [2, 3, 0, 0, 0, 0, 0, 5, 5, 2, 2, 2],
  [4, 0, 0, 0, 5, 2, 2, 10, 0, 0, 5, 5],
  [1, 2, 0, 5, 0, 10, 0, 0, 0, 5, 1, 1],
  [0, 2, 0, 2, 10, 0, 5, 1, 1, 5, 4, 0],
  [0, 2, 0, 2, 0, 5, 0, 10, 5, 2, 3, 3],
  [6, 0, 5, 10, 0, 1, 10, 0, 0, 0, 5, 0],
  [2, 4, 5, 0, 0, 1, 5, 0, 0, 0, 10, 10],
  [1, 5, 2, 0, 5, 5, 2, 0, 0, 0, 5, 0],
  [1, 0, 2, 5, 1, 4, 3, 5, 10, 5, 0, 2],
  [1, 0, 2, 5, 1, 0, 3, 0, 10, 0, 2, 0],
];

/** The five places of nug5. */
export const NUG5_DISTANCES: readonly (readonly number[])[] = [
  [0, 1, 1, 2, 3],
  [1, 0, 2, 1, 2],
  [1, 2, 0, 1, 2],
  [2, 1, 1, 0, 1],
  [3, 2, 2, 1, 0],
];

/** City-block distances between the places of a grid. */
export function gridOf(rows: number, columns: number): number[][] {
  const places = Array.from({ length: rows * columns }, (_, at) => at);
  const apart = (a: number, b: number): number =>
    Math.abs(Math.floor(a / columns) - Math.floor(b / columns)) +
    Math.abs((a % columns) - (b % columns));
  return places.map((a) => places.map((b) => apart(a, b)));
}

/** Plants as slots, places as designs of one copy; worth is less the cost, both ways. */
export function quadraticAssignment(
  flows: readonly (readonly number[])[],
  distances: readonly (readonly number[])[],
): Network {
  const count = distances.length;
  const every = Array.from({ length: count }, (_, at) => at);
  return {
    allowed: every.map(() => every),
    copies: every.map(() => 1),
    factors: every.flatMap((a) =>
      every.slice(a + 1).map((b) => ({
        scope: [a, b],
        sizes: [count, count],
        data: Float64Array.from(
          every.flatMap((x) => every.map((y) => -2 * flows[a]![b]! * distances[x]![y]!)),
        ),
      })),
    ),
    wides: [],
  };
}
