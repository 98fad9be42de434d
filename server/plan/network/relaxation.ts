import { count, merged, strides } from './factor.ts';
import type { Factor } from './factor.ts';
import { relaxed } from './network.ts';
import type { Network } from './network.ts';

/**
 * A part of the search, written so that it can be bounded: the slots that are open, the designs still
 * possible for each, and the worth of a choice as
 *     constant + unaries + pairs + triples - prices of the copies that it leaves unused.
 * The tables belong to it and are rewritten in place while it is tightened; the worth of every choice
 * stays the same. Members of pairs and triples are places in `slots`, ascending.
 */
export interface Relaxation {
  readonly slots: readonly number[];
  /** Possible designs of each open slot, ascending. */
  readonly designs: readonly Int32Array[];
  readonly unary: readonly Float64Array[];
  readonly pairs: readonly Pair[];
  readonly triples: readonly Triple[];
  constant: number;
  /** What a copy of each design costs: the unaries have paid it, and the constant holds that of all copies left. */
  prices: Float64Array;
  /** Copies of each design that are left. */
  readonly copies: Int32Array;
  /** Design of each settled slot of the network, -1 for open ones. */
  readonly settled: Int32Array;
}

export interface Pair {
  readonly a: number;
  readonly b: number;
  /** The designs of b run fastest. */
  readonly data: Float64Array;
}

export interface Triple {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** The designs of c run fastest. What was passed on has not been taken off yet. */
  readonly data: Float64Array;
  /** Numbers in `pairs` of ab, ac and bc. */
  readonly sides: readonly [number, number, number];
  /** What the triple has passed on to each of these pairs. */
  readonly passed: readonly [Float64Array, Float64Array, Float64Array];
}

/** Worth of what cannot be: far below any plan, yet finite, so that sums and differences stay numbers. */
export const NEVER = -1e4;

/**
 * The whole network as a relaxation. A design of one copy never stands twice in a pair, one of two
 * copies never three times in a triple: that is written into the tables, the rest of the counting is
 * left to the prices and to the search.
 */
export function relaxationOf(network: Network): Relaxation {
  const designs = network.allowed.map((list) =>
    Int32Array.from(list.filter((design) => network.copies[design]! > 0)),
  );
  const unary = designs.map((list) => new Float64Array(list.length));
  const book = createBook(designs);
  let constant = 0;
  for (const factor of merged(relaxed(network).factors)) {
    const cut = cutTo(factor, designs);
    if (factor.scope.length > 3)
      throw new RangeError(`Expected tables of up to 3 slots but received ${factor.scope.length}`);
    const [a, b, c] = factor.scope;
    if (a === undefined) constant += cut[0]!;
    else if (b === undefined) add(unary[a]!, cut);
    else if (c === undefined) add(book.pair(a, b), cut);
    else add(book.triple(a, b, c), cut);
  }
  const copies = Int32Array.from(network.copies);
  const { pairs, triples } = book.close();
  for (const pair of pairs) forbidTwice(pair, designs, copies);
  for (const triple of triples) forbidThrice(triple, designs, copies);
  return {
    slots: designs.map((_, slot) => slot),
    designs,
    unary,
    pairs,
    triples,
    constant,
    prices: new Float64Array(copies.length),
    copies,
    settled: new Int32Array(designs.length).fill(-1),
  };
}

/**
 * The relaxation with slot `at` settled on the design at `place`, and the other slots cut down to
 * `kept`: places in their lists of designs (the list of `at` itself plays no part).
 */
export function settle(
  whole: Relaxation,
  at: number,
  place: number,
  kept: readonly Int32Array[],
): Relaxation {
  const chosen = kept.map((list, slot) => (slot === at ? Int32Array.of(place) : list));
  const design = whole.designs[at]![place]!;
  const renamed = (slot: number): number => (slot > at ? slot - 1 : slot);
  const others = <T>(list: readonly T[]): T[] => list.filter((_, slot) => slot !== at);
  const cut = cutDown(whole, chosen);
  const unary = others(cut.unary);
  const designs = others(cut.designs);
  const book = createBook(designs);
  for (const { a, b, data } of cut.pairs) {
    if (a === at) add(unary[renamed(b)]!, data);
    else if (b === at) add(unary[a]!, data);
    else add(book.pair(renamed(a), renamed(b)), data);
  }
  for (const { a, b, c, data } of cut.triples) {
    if (a === at) add(book.pair(renamed(b), renamed(c)), data);
    else if (b === at) add(book.pair(a, renamed(c)), data);
    else if (c === at) add(book.pair(a, b), data);
    else book.take(renamed(a), renamed(b), renamed(c), data);
  }
  const copies = whole.copies.slice();
  copies[design]!--;
  const settled = whole.settled.slice();
  settled[whole.slots[at]!] = design;
  return {
    slots: others(whole.slots),
    designs,
    unary,
    ...book.close(),
    constant: whole.constant + whole.unary[at]![place]!,
    prices: whole.prices.slice(),
    copies,
    settled,
  };
}

/** The relaxation with each slot cut down to these places in its list; what was passed on is taken off. */
export function cutDown(whole: Relaxation, kept: readonly Int32Array[]): Relaxation {
  const sizes = whole.designs.map((list) => list.length);
  const data = (members: readonly number[], from: Float64Array): Float64Array =>
    picked(
      from,
      members.map((member) => sizes[member]!),
      members.map((member) => kept[member]!),
    );
  return {
    ...whole,
    designs: whole.designs.map((list, at) => kept[at]!.map((place) => list[place]!)),
    unary: whole.unary.map((row, at) => Float64Array.from(kept[at]!, (place) => row[place]!)),
    pairs: whole.pairs.map(({ a, b, data: from }) => ({ a, b, data: data([a, b], from) })),
    triples: whole.triples.map((triple) => {
      const { a, b, c, sides } = triple;
      const [ab, ac, bc] = triple.passed;
      const out = data([a, b, c], triple.data);
      takeOff(out, data([a, b], ab), data([a, c], ac), data([b, c], bc), kept[c]!.length);
      return { a, b, c, sides, data: out, passed: nothing(kept, a, b, c) };
    }),
  };
}

/** Takes what the triples have passed on off their tables, so that these can be read as they are. */
export function writtenOut(whole: Relaxation): Relaxation {
  for (const triple of whole.triples) {
    const [ab, ac, bc] = triple.passed;
    takeOff(triple.data, ab, ac, bc, whole.designs[triple.c]!.length);
    for (const table of triple.passed) table.fill(0);
  }
  return whole;
}

function takeOff(
  data: Float64Array,
  ab: Float64Array,
  ac: Float64Array,
  bc: Float64Array,
  width: number,
): void {
  const rows = bc.length / width;
  for (let row = 0, cell = 0; row < ab.length; row++) {
    const first = ab[row]!;
    const left = Math.floor(row / rows) * width;
    const right = (row % rows) * width;
    for (let place = 0; place < width; place++, cell++)
      data[cell]! -= first + ac[left + place]! + bc[right + place]!;
  }
}

/** Collects pairs and triples, each once, and makes the pairs that the triples lean on. */
function createBook(designs: readonly Int32Array[]): {
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

function nothing(
  lists: readonly ArrayLike<number>[],
  a: number,
  b: number,
  c: number,
): Triple['passed'] {
  const blank = (one: number, other: number): Float64Array =>
    new Float64Array(lists[one]!.length * lists[other]!.length);
  return [blank(a, b), blank(a, c), blank(b, c)];
}

function add(to: Float64Array, from: Float64Array): void {
  for (let cell = 0; cell < to.length; cell++) to[cell]! += from[cell]!;
}

/** The cells of a factor over all designs that stand for possible ones. */
function cutTo(factor: Factor, designs: readonly Int32Array[]): Float64Array {
  const out = picked(
    factor.data,
    factor.sizes,
    factor.scope.map((slot) => designs[slot]!),
  );
  for (let cell = 0; cell < out.length; cell++) if (out[cell]! < NEVER) out[cell] = NEVER;
  return out;
}

/** The cells of a table at these places of each of its variables. */
function picked(
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

function forbidTwice(
  { a, b, data }: Pair,
  designs: readonly Int32Array[],
  copies: Int32Array,
): void {
  const width = designs[b]!.length;
  designs[a]!.forEach((design, row) => {
    if (copies[design] !== 1) return;
    const column = designs[b]!.indexOf(design);
    if (column >= 0) data[row * width + column] = NEVER;
  });
}

function forbidThrice(
  { a, b, c, data }: Triple,
  designs: readonly Int32Array[],
  copies: Int32Array,
): void {
  designs[a]!.forEach((design, first) => {
    if (copies[design] !== 2) return;
    const second = designs[b]!.indexOf(design);
    const third = designs[c]!.indexOf(design);
    if (second < 0 || third < 0) return;
    data[(first * designs[b]!.length + second) * designs[c]!.length + third] = NEVER;
  });
}
