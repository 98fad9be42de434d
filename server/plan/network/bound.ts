import { assign } from './assignment.ts';
import { keep } from './node.ts';
import type { Node } from './node.ts';
import type { Factor } from './factor.ts';
import { HAIR } from './network.ts';

export interface Tightened {
  readonly node: Node;
  /** No choice within the node is worth more; -Infinity when there is none. */
  readonly bound: number;
}

/**
 * An upper bound of a node, and the node without the designs that cannot beat `incumbent`.
 *
 * The tables are rewritten without changing the worth of any choice: each factor in turn takes in the
 * unaries of its slots and gives every slot an equal part of the best that it can still reach there
 * (the block update of Globerson and Jaakkola 2007, 'Fixing max-product', NIPS 20, on the dual of the
 * local relaxation of weighted constraints: Cooper et al. 2010, Artificial Intelligence 174, 449-478).
 * After a round every factor is at most 0, so the unaries alone bound the worth; the copies come in
 * by solving the assignment of designs to slots on the unaries exactly. Its dual prices say by how much
 * each design falls short, and a design that falls below the incumbent goes.
 */
export function tighten(start: Node, incumbent: number, rounds: number): Tightened {
  let node = start;
  let bound = Infinity;
  const paid = new Float64Array(node.copies.length);
  for (let round = 0; round < rounds; round++) {
    for (const factor of node.factors) share(factor, node.unary);
    const step = priced(node, paid, incumbent);
    if (step === null) return { node, bound: -Infinity };
    node = step.node;
    const gain = bound - step.bound;
    bound = Math.min(bound, step.bound);
    if (bound <= incumbent + HAIR) break;
    if (!step.smaller && gain < 0.01 * (bound - incumbent)) break;
  }
  return { node: repaid(node, paid), bound };
}

/** Solves the assignment on the unaries, moves its prices into the tables and drops hopeless designs. */
function priced(
  node: Node,
  paid: Float64Array,
  incumbent: number,
): { node: Node; bound: number; smaller: boolean } | null {
  const kinds = node.copies.length;
  const rows = node.live.map((designs, at) => {
    const row = new Float64Array(kinds).fill(-Infinity);
    designs.forEach((design, place) => (row[design] = node.unary[at]![place]! + paid[design]!));
    return row;
  });
  const solved = assign(rows, node.copies);
  if (solved === null) return null;
  let constant = node.constant;
  for (let design = 0; design < kinds; design++) {
    constant += node.copies[design]! * (solved.columnPrice[design]! - paid[design]!);
  }
  node.live.forEach((designs, at) => {
    const row = node.unary[at]!;
    designs.forEach((design, place) => {
      row[place]! += paid[design]! - solved.columnPrice[design]! - solved.rowPrice[at]!;
    });
    constant += solved.rowPrice[at]!;
  });
  paid.set(solved.columnPrice);
  const bound = constant;
  const live = node.live.map((designs, at) =>
    designs.filter((_, place) => bound + node.unary[at]![place]! > incumbent + HAIR),
  );
  const smaller = live.some((designs, at) => designs.length < node.live[at]!.length);
  const next = { ...node, constant };
  if (live.some((designs) => designs.length === 0))
    return { node: next, bound: Math.min(bound, incumbent), smaller };
  return { node: smaller ? keep(next, live) : next, bound, smaller };
}

/** Takes the prices of the copies back out of the tables, so that children start from plain worth. */
function repaid(node: Node, paid: Float64Array): Node {
  let constant = node.constant;
  node.copies.forEach((copies, design) => (constant -= copies * paid[design]!));
  node.live.forEach((designs, at) => {
    designs.forEach((design, place) => (node.unary[at]![place]! += paid[design]!));
  });
  return { ...node, constant };
}

/** One factor takes in the unaries of its slots and hands each an equal part of its best. */
function share(factor: Factor, unary: readonly Float64Array[]): void {
  const rows = factor.scope.map((variable) => unary[variable]!);
  const best = rows.map((row) => new Float64Array(row.length).fill(-Infinity));
  const last = rows.length - 1;
  const lastRow = rows[last]!;
  const lastBest = best[last]!;
  const width = lastRow.length;
  const { data } = factor;
  let cell = 0;
  const look = (at: number, base: number): number => {
    let most = -Infinity;
    if (at === last) {
      for (let place = 0; place < width; place++, cell++) {
        const value = data[cell]! + base + lastRow[place]!;
        if (value > most) most = value;
        if (value > lastBest[place]!) lastBest[place] = value;
      }
      return most;
    }
    const row = rows[at]!;
    const own = best[at]!;
    for (let place = 0; place < row.length; place++) {
      const value = look(at + 1, base + row[place]!);
      if (value > own[place]!) own[place] = value;
      if (value > most) most = value;
    }
    return most;
  };
  look(0, 0);
  const move = rows.map((row, at) => {
    const own = best[at]!;
    return row.map((value, place) => {
      const part = own[place]! / rows.length;
      row[place] = part;
      return value - part;
    });
  });
  const lastMove = move[last]!;
  cell = 0;
  const write = (at: number, base: number): void => {
    if (at === last) {
      for (let place = 0; place < width; place++, cell++) data[cell]! += base + lastMove[place]!;
      return;
    }
    const own = move[at]!;
    for (const moved of own) write(at + 1, base + moved);
  };
  write(0, 0);
}
