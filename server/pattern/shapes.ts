import type { Labels } from '../colour/label-pixels.ts';
import { workRoom } from '../colour/work-room.ts';

/** Printed shapes: joined pixels of one colour. */
export interface Shapes {
  /** The number of the shape that each pixel belongs to; of the ground it says nothing. Good until the next call. */
  readonly shape: Int32Array;
  /** The first pixel of each shape, in reading order. */
  readonly first: readonly number[];
}

/**
 * Parts a picture into its printed shapes, pixels of one colour being joined across their four sides.
 *
 * Takes       which colour each pixel shows, and which colour is the ground.
 * Source      Rosenfeld, Pfaltz (1966), J. ACM 13(4), 471-494, doi:10.1145/321356.321357: two passes over the rows,
 *             with runs in place of pixels.
 */
export function shapesOf({ width, height, of }: Labels, ground: number): Shapes {
  const shape = shapeRoom(of.length);
  // Each run of a row begins as a shape of its own; those below each other are joined under the earlier one.
  const parent: number[] = [];
  const begins: number[] = [];
  for (let y = 0, at = 0; y < height; y++)
    for (const end = at + width; at < end;) {
      const label = of[at]!;
      const begin = at++;
      while (at < end && of[at] === label) at++;
      if (label === ground) continue;
      let own = -1;
      if (y > 0)
        for (let above = begin - width; above < at - width; above++) {
          if (of[above] !== label) continue;
          const met = rootOf(parent, shape[above]!);
          if (own < 0) own = met;
          else if (met < own) own = parent[own] = met;
          else if (met > own) parent[met] = own;
        }
      if (own < 0) {
        own = parent.length;
        parent.push(own);
        begins.push(begin);
      }
      shape.fill(own, begin, at);
    }
  const first: number[] = [];
  const number = Int32Array.from(parent, (up, run) => {
    if (up === run) return first.push(begins[run]!) - 1;
    return -1;
  });
  for (let run = 0; run < parent.length; run++) number[run] = number[rootOf(parent, run)]!;
  for (let at = 0; at < of.length; at++) if (of[at] !== ground) shape[at] = number[shape[at]!]!;
  return { shape, first };
}

const shapeRoom = workRoom((length) => new Int32Array(length));

function rootOf(parent: number[], run: number): number {
  let root = run;
  while (parent[root] !== root) root = parent[root]!;
  parent[run] = root;
  return root;
}
