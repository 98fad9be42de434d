import { assign } from './assignment.ts';
import { HAIR } from './network.ts';
import { cutDown } from './narrowed.ts';
import { NEVER } from './relaxation.ts';
import type { Pair, Relaxation, Triple } from './relaxation.ts';

export interface Tightened {
  readonly relaxation: Relaxation;
  /** No choice within the relaxation is worth more; -Infinity when there is none. */
  readonly bound: number;
}

/** A round that wins less than this part of what is missing is the last. */
const WORTH_A_ROUND = 0.04;

/**
 * An upper bound of a relaxation, and the relaxation without the designs that cannot beat `least`.
 *
 * The tables are rewritten without changing the worth of any choice. Each triple in turn takes in its
 * three pairs and gives each an equal part of the best that it can still reach there; then each pair
 * does so with its two unaries (the block update of Globerson and Jaakkola 2007, 'Fixing
 * max-product', NIPS 20, with pairs between the triples as in Sontag et al. 2008, 'Tightening LP
 * relaxations for MAP using message passing', UAI 24). After a round no table is above 0, so the
 * unaries alone bound the worth; the copies come in by solving the assignment of designs to slots on
 * them exactly. Its dual prices say by how much each design falls short, and a design that falls
 * to `least` goes.
 */
export function tighten(start: Relaxation, least: number, rounds: number): Tightened {
  let relaxation = start;
  let bound = Infinity;
  for (let round = 0; round < rounds; round++) {
    for (const triple of relaxation.triples) passToPairs(triple, relaxation);
    for (const pair of relaxation.pairs) passToUnaries(pair, relaxation.unary);
    const before = bound;
    bound = price(relaxation);
    if (bound <= least + HAIR) return { relaxation, bound };
    const kept = hopeful(relaxation, bound, least);
    if (kept.some((list) => list.length === 0)) return { relaxation, bound: least };
    const smaller = kept.some((list, at) => list.length < relaxation.designs[at]!.length);
    if (smaller) relaxation = cutDown(relaxation, kept);
    else if (before - bound < WORTH_A_ROUND * (bound - least)) break;
  }
  return { relaxation, bound };
}

/** The places of the designs in each slot that can still beat `least`. */
function hopeful(relaxation: Relaxation, bound: number, least: number): Int32Array[] {
  return relaxation.unary.map((row) => {
    const kept: number[] = [];
    for (let place = 0; place < row.length; place++)
      if (bound + row[place]! > least + HAIR) kept.push(place);
    return Int32Array.from(kept);
  });
}

function passToPairs(triple: Triple, { pairs, designs }: Relaxation): void {
  const [rows, columns, width] = [triple.a, triple.b, triple.c].map(
    (at) => designs[at]!.length,
  ) as [number, number, number];
  const [ab, ac, bc] = triple.sides.map((side) => pairs[side]!.data) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const [gaveAb, gaveAc, gaveBc] = triple.passed;
  for (let cell = 0; cell < ab.length; cell++) ab[cell]! -= gaveAb[cell]!;
  for (let cell = 0; cell < ac.length; cell++) ac[cell]! -= gaveAc[cell]!;
  for (let cell = 0; cell < bc.length; cell++) bc[cell]! -= gaveBc[cell]!;
  const bestAb = new Float64Array(ab.length);
  const bestAc = new Float64Array(ac.length).fill(-Infinity);
  const bestBc = new Float64Array(bc.length).fill(-Infinity);
  reach(triple.data, rows, columns, width, ab, ac, bc, bestAb, bestAc, bestBc);
  handOn(ab, gaveAb, bestAb);
  handOn(ac, gaveAc, bestAc);
  handOn(bc, gaveBc, bestBc);
}

/** The best that a triple together with its pairs can reach for each cell of each pair. */
function reach(
  data: Float64Array,
  rows: number,
  columns: number,
  width: number,
  ab: Float64Array,
  ac: Float64Array,
  bc: Float64Array,
  bestAb: Float64Array,
  bestAc: Float64Array,
  bestBc: Float64Array,
): void {
  let cell = 0;
  for (let row = 0; row < rows; row++) {
    const left = row * width;
    for (let column = 0; column < columns; column++) {
      const base = ab[row * columns + column]!;
      const right = column * width;
      let most = -Infinity;
      for (let place = 0; place < width; place++) {
        const value = data[cell++]! + base + ac[left + place]! + bc[right + place]!;
        if (value > most) most = value;
        if (value > bestAc[left + place]!) bestAc[left + place] = value;
        if (value > bestBc[right + place]!) bestBc[right + place] = value;
      }
      bestAb[row * columns + column] = most;
    }
  }
}

function handOn(pair: Float64Array, gave: Float64Array, best: Float64Array): void {
  for (let cell = 0; cell < pair.length; cell++) {
    const part = best[cell]! / 3;
    gave[cell] = part - pair[cell]!;
    pair[cell] = part;
  }
}

function passToUnaries({ a, b, data }: Pair, unary: readonly Float64Array[]): void {
  const rows = unary[a]!;
  const columns = unary[b]!;
  const width = columns.length;
  const bestRow = new Float64Array(rows.length);
  const bestColumn = new Float64Array(width).fill(-Infinity);
  for (let row = 0, cell = 0; row < rows.length; row++) {
    let most = -Infinity;
    for (let column = 0; column < width; column++) {
      const value = data[cell++]! + rows[row]! + columns[column]!;
      if (value > most) most = value;
      if (value > bestColumn[column]!) bestColumn[column] = value;
    }
    bestRow[row] = most;
  }
  for (let row = 0, cell = 0; row < rows.length; row++) {
    const moved = rows[row]! - bestRow[row]! / 2;
    for (let column = 0; column < width; column++)
      data[cell++]! += moved + columns[column]! - bestColumn[column]! / 2;
  }
  for (let row = 0; row < rows.length; row++) rows[row] = bestRow[row]! / 2;
  for (let column = 0; column < width; column++) columns[column] = bestColumn[column]! / 2;
}

/** Solves the assignment on the unaries and moves its prices into them; gives the bound. */
function price(relaxation: Relaxation): number {
  const { designs, unary, copies, prices } = relaxation;
  const rows = unary.map((row, at) => {
    const wide = new Float64Array(copies.length).fill(-Infinity);
    designs[at]!.forEach((design, place) => (wide[design] = row[place]! + prices[design]!));
    return wide;
  });
  const solved = assign(rows, copies);
  if (solved === null) return -Infinity;
  let { constant } = relaxation;
  for (let design = 0; design < copies.length; design++)
    constant += copies[design]! * (solved.columnPrice[design]! - prices[design]!);
  unary.forEach((row, at) => {
    const own = solved.rowPrice[at]!;
    designs[at]!.forEach((design, place) => {
      row[place]! += prices[design]! - solved.columnPrice[design]! - own;
    });
    constant += own;
  });
  relaxation.prices = solved.columnPrice;
  relaxation.constant = constant;
  return constant < NEVER / 2 ? -Infinity : constant;
}
