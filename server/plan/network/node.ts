import { constantFactor, count, merged, strides } from './factor.ts';
import type { Factor } from './factor.ts';
import { relaxed } from './network.ts';
import type { Network, Wide } from './network.ts';

/**
 * A part of the search: the slots that are still open with the designs still possible for each, and
 * what remains of the network. Its worth for a choice is `constant` + unaries + factors. The tables
 * belong to the node and are rewritten in place when its bound is tightened; the worth of every
 * choice stays the same.
 */
export interface Node {
  /** Slot numbers of the network. */
  slots: number[];
  /** Possible designs of each open slot. */
  live: Int32Array[];
  /** Worth of each possible design, beside `live`. */
  unary: Float64Array[];
  /** Over places in `slots`. */
  factors: Factor[];
  constant: number;
  /** Copies of each design that are left. */
  copies: number[];
  /** Cards that stand in `factors` by their upper tables only. */
  wides: readonly Wide[];
  /** What is settled: design of each settled slot, -1 for open ones. */
  settled: number[];
}

export function rootOf(network: Network): Node {
  const live = network.allowed.map((designs) => Int32Array.from(designs));
  const kinds = network.copies.length;
  const whole: Node = {
    slots: network.allowed.map((_, slot) => slot),
    live: network.allowed.map(() => Int32Array.from({ length: kinds }, (_, design) => design)),
    unary: network.allowed.map(() => new Float64Array(kinds)),
    factors: merged(relaxed(network).factors),
    wides: network.wides,
    constant: 0,
    copies: [...network.copies],
    settled: network.allowed.map(() => -1),
  };
  return exactWhereShort(gathered(keep(whole, live)));
}

/** The node with slot `at` settled on one of its designs; null when some slot has no design left. */
export function settle(node: Node, at: number, value: number): Node | null {
  const design = node.live[at]![value]!;
  const copies = [...node.copies];
  copies[design]!--;
  const settled = [...node.settled];
  settled[node.slots[at]!] = design;
  const others = <T>(list: readonly T[]): T[] => list.filter((_, place) => place !== at);
  const renamed = (place: number): number => (place > at ? place - 1 : place);
  const factors = node.factors.map((factor) => {
    const sliced = factor.scope.includes(at) ? slice(factor, at, value) : factor;
    return { ...sliced, scope: sliced.scope.map(renamed) };
  });
  const child = gathered({
    slots: others(node.slots),
    live: others(node.live),
    unary: others(node.unary).map((row) => row.slice()),
    factors: merged(factors),
    constant: node.constant + node.unary[at]![value]!,
    copies,
    settled,
    wides: node.wides,
  });
  if (copies[design]! > 0) return exactWhereShort(child);
  const left = child.live.map((designs) => designs.filter((other) => other !== design));
  return left.some((designs) => designs.length === 0) ? null : exactWhereShort(keep(child, left));
}

/** A wide card is written out exactly once its table has no more cells than this. */
const SHORT = 150;

/** Puts the true worth of wide cards in the place of their upper tables where few choices are left. */
export function exactWhereShort(node: Node): Node {
  const wides: Wide[] = [];
  const corrections: Factor[] = [];
  for (const wide of node.wides) {
    const lists = wide.scope.map((slot) => {
      const at = node.slots.indexOf(slot);
      return at < 0 ? [node.settled[slot]!] : [...node.live[at]!];
    });
    if (count(lists.map((list) => list.length)) > SHORT) wides.push(wide);
    else corrections.push(correction(node, wide, lists));
  }
  if (corrections.length === 0) return node;
  return gathered({
    ...node,
    unary: node.unary.map((row) => row.slice()),
    factors: merged([...node.factors, ...corrections]),
    wides,
  });
}

/** True worth less upper tables, over the slots of the wide card that are still open. */
function correction(node: Node, wide: Wide, lists: readonly (readonly number[])[]): Factor {
  const sizes = lists.map((list) => list.length);
  const data = wide.exact(lists);
  const digits = sizes.map(() => 0);
  const places = wide.upper.map((factor) => factor.scope.map((slot) => wide.scope.indexOf(slot)));
  for (let cell = 0; cell < data.length; cell++) {
    wide.upper.forEach((factor, number) => {
      let offset = 0;
      places[number]!.forEach((at, place) => {
        offset = offset * factor.sizes[place]! + lists[at]![digits[at]!]!;
      });
      data[cell]! -= factor.data[offset]!;
    });
    for (let at = sizes.length - 1; at >= 0; at--) {
      if (++digits[at]! < sizes[at]!) break;
      digits[at] = 0;
    }
  }
  const open = wide.scope.map((slot) => node.slots.indexOf(slot));
  return {
    scope: open.filter((at) => at >= 0),
    sizes: sizes.filter((_, at) => open[at]! >= 0),
    data,
  };
}

/** The node with its tables cut down to the designs in `live`. */
export function keep(node: Node, live: readonly Int32Array[]): Node {
  if (live.every((designs, at) => designs.length === node.live[at]!.length)) return node;
  const places = live.map((designs, at) => {
    const where = new Map<number, number>();
    node.live[at]!.forEach((design, place) => where.set(design, place));
    return Int32Array.from(designs, (design) => where.get(design)!);
  });
  return {
    ...node,
    live: [...live],
    unary: node.unary.map((row, at) => Float64Array.from(places[at]!, (place) => row[place]!)),
    factors: node.factors.map((factor) => restrict(factor, places)),
  };
}

function restrict(factor: Factor, places: readonly Int32Array[]): Factor {
  const chosen = factor.scope.map((variable) => places[variable]!);
  if (chosen.every((list, at) => list.length === factor.sizes[at]!)) return factor;
  const steps = strides(factor.sizes);
  const out = constantFactor(
    factor.scope,
    chosen.map((list) => list.length),
  );
  let cell = 0;
  const walk = (at: number, offset: number): void => {
    const list = chosen[at]!;
    const step = steps[at]!;
    if (at === chosen.length - 1) {
      for (const place of list) out.data[cell++] = factor.data[offset + place * step]!;
      return;
    }
    for (const place of list) walk(at + 1, offset + place * step);
  };
  walk(0, 0);
  return out;
}

function slice(factor: Factor, variable: number, value: number): Factor {
  const at = factor.scope.indexOf(variable);
  const inner = strides(factor.sizes)[at]!;
  const size = factor.sizes[at]!;
  const out = constantFactor(
    factor.scope.filter((_, place) => place !== at),
    factor.sizes.filter((_, place) => place !== at),
  );
  for (let outer = 0, cell = 0; cell < out.data.length; outer++) {
    const from = (outer * size + value) * inner;
    for (let step = 0; step < inner; step++) out.data[cell++] = factor.data[from + step]!;
  }
  return out;
}

/** Factors over one slot or none go into the unaries and the constant. */
function gathered(node: Node): Node {
  const factors: Factor[] = [];
  for (const factor of node.factors) {
    if (factor.scope.length === 0) node.constant += factor.data[0]!;
    else if (factor.scope.length === 1) {
      const row = node.unary[factor.scope[0]!]!;
      for (let at = 0; at < row.length; at++) row[at]! += factor.data[at]!;
    } else factors.push(factor);
  }
  return { ...node, factors };
}
