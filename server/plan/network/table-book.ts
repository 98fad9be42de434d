import { count, strides } from './factor.ts';
import type { Pair, Triple } from './relaxation.ts';

/** Collects pairs and triples, each once, and makes the pairs that the triples lean on. */
export function createBook(designs: readonly Int32Array[]): {
  pair(a: number, b: number): Float64Array;
  triple(a: number, b: number, c: number): Float64Array;
  take(a: number, b: number, c: number, data: Float64Array): void;
  close(): { pairs: Pair[]; triples: Triple[] };
} {
  const span = designs.length;
  const width = (slot: number): number => designs[slot]!.length;
  const pairs = new Map<number, Pair>();
  const triples = new Map<number, Omit<Triple, 'sides' | 'passed'>>();
  const pair = (a: number, b: number): Float64Array => {
    const key = a * span + b;
    let found = pairs.get(key);
    if (found === undefined) {
      found = { a, b, data: new Float64Array(width(a) * width(b)) };
      pairs.set(key, found);
    }
    return found.data;
  };
  const take = (a: number, b: number, c: number, data: Float64Array): void => {
    triples.set((a * span + b) * span + c, { a, b, c, data });
  };
  return {
    pair,
    take,
    triple(a, b, c) {
      const found = triples.get((a * span + b) * span + c);
      if (found !== undefined) return found.data;
      const data = new Float64Array(width(a) * width(b) * width(c));
      take(a, b, c, data);
      return data;
    },
    close() {
      for (const { a, b, c } of triples.values()) {
        pair(a, b);
        pair(a, c);
        pair(b, c);
      }
      const numbers = new Map([...pairs.keys()].map((key, number) => [key, number]));
      const side = (a: number, b: number): number => numbers.get(a * span + b)!;
      return {
        pairs: [...pairs.values()],
        triples: [...triples.values()].map((one): Triple => {
          const { a, b, c } = one;
          const sides = [side(a, b), side(a, c), side(b, c)] as const;
          return { ...one, sides, passed: nothing(designs, a, b, c) };
        }),
      };
    },
  };
}

/** Nothing passed on yet, for a triple over these lists. */
export function nothing(
  lists: readonly ArrayLike<number>[],
  a: number,
  b: number,
  c: number,
): Triple['passed'] {
  const blank = (one: number, other: number): Float64Array =>
    new Float64Array(lists[one]!.length * lists[other]!.length);
  return [blank(a, b), blank(a, c), blank(b, c)];
}

export function add(to: Float64Array, from: Float64Array): void {
  for (let cell = 0; cell < to.length; cell++) to[cell]! += from[cell]!;
}

/** The cells of a table at these places of each of its variables. */
export function picked(
  data: Float64Array,
  sizes: readonly number[],
  places: readonly Int32Array[],
): Float64Array {
  if (places.every((list, at) => list.length === sizes[at])) return data.slice();
  const steps = strides(sizes);
  const out = new Float64Array(count(places.map((list) => list.length)));
  let cell = 0;
  const walk = (at: number, offset: number): void => {
    const list = places[at]!;
    const step = steps[at]!;
    if (at === places.length - 1)
      for (const place of list) out[cell++] = data[offset + place * step]!;
    else for (const place of list) walk(at + 1, offset + place * step);
  };
  walk(0, 0);
  return out;
}
