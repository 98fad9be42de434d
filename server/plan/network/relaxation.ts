import { merged } from './factor.ts';
import type { Factor } from './factor.ts';
import { relaxed } from './network.ts';
import type { Network } from './network.ts';
import { add, createBook, picked } from './table-book.ts';

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
