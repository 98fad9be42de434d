import { merged, strides } from './factor.ts';
import type { Factor } from './factor.ts';
import type { Network } from './network.ts';

/**
 * Slots that may be exchanged without a change in worth, as where two cards are alike. Each symmetry is a
 * list that says for each slot which slot it takes the place of, and undoes itself when done twice.
 *
 * Found from each pair of slots by following the tables that hang on them; what is found is verified
 * over all tables. Not all symmetries need be found: each only saves doing and showing the same twice.
 */
export function symmetriesOf(network: Network): number[][] {
  const tables = kindsOf(network);
  const count = network.allowed.length;
  const found: number[][] = [];
  for (let a = 0; a < count; a++)
    for (let b = a + 1; b < count; b++) {
      const swap = followed(tables, count, a, b);
      if (swap !== null && holds(network, tables, swap)) found.push(swap);
    }
  return found;
}

/** The same plan up to symmetry, always the same of all its forms: earlier slots take earlier designs. */
export function settledForm(
  symmetries: readonly (readonly number[])[],
  choice: ArrayLike<number>,
): number[] {
  let form = Array.from(choice);
  for (let better = true; better;) {
    better = false;
    for (const swap of symmetries) {
      const other = swap.map((slot) => form[slot]!);
      const at = other.findIndex((design, slot) => design !== form[slot]);
      if (at < 0 || other[at]! > form[at]!) continue;
      form = other;
      better = true;
    }
  }
  return form;
}

/**
 * Pairs of slots of which the first needs no later design than the second: the first slot that a
 * symmetry moves and the one it changes with. The settled form of every plan keeps to them.
 */
export function rulesOf(symmetries: readonly (readonly number[])[]): [number, number][] {
  return symmetries.map((swap) => {
    const first = swap.findIndex((slot, at) => slot !== at);
    return [first, swap[first]!];
  });
}

/** A table over some slots; tables of one kind are one function of the designs in their slots. */
interface Kind {
  readonly kind: number;
  /** The slots in the order of the function's arguments; several orders where it does not mind. */
  readonly orders: readonly (readonly number[])[];
}

function kindsOf(network: Network): Kind[] {
  const seen: Factor[] = [];
  const cards = new Map<unknown, number>();
  const factors = merged(network.factors).map((factor): Kind => {
    const known = seen.findIndex((one) => ordersLike(one, factor).length > 0);
    if (known < 0) seen.push(factor);
    const kind = known < 0 ? seen.length - 1 : known;
    return { kind, orders: ordersLike(seen[kind]!, factor) };
  });
  const wides = network.wides.map(({ scope, card }): Kind => {
    if (!cards.has(card)) cards.set(card, cards.size);
    return { kind: -1 - cards.get(card)!, orders: [scope] };
  });
  return [...factors, ...wides];
}

/** The orders of its slots in which a table reads like the first. */
function ordersLike(first: Factor, table: Factor): number[][] {
  if (first.data.length !== table.data.length || first.scope.length !== table.scope.length)
    return [];
  const steps = strides(table.sizes);
  return orders([...table.scope.keys()])
    .filter((order) => {
      if (order.some((at, place) => table.sizes[at] !== first.sizes[place])) return false;
      const moved = order.map((at) => steps[at]!);
      let cell = 0;
      const same = (place: number, offset: number): boolean => {
        if (place === order.length) return alike(table.data[offset]!, first.data[cell++]!);
        for (let value = 0; value < first.sizes[place]!; value++)
          if (!same(place + 1, offset + value * moved[place]!)) return false;
        return true;
      };
      return same(0, 0);
    })
    .map((order) => order.map((at) => table.scope[at]!));
}

function orders(list: readonly number[]): number[][] {
  if (list.length === 0) return [[]];
  return list.flatMap((first) =>
    orders(list.filter((one) => one !== first)).map((rest) => [first, ...rest]),
  );
}

/** The exchange that follows from putting one slot in the place of another; null when none does. */
function followed(tables: readonly Kind[], count: number, a: number, b: number): number[] | null {
  const to = new Array<number>(count).fill(-1);
  const waiting: number[] = [];
  const put = (one: number, other: number): boolean => {
    if (to[one] === other) return true;
    if (to[one] !== -1 || to[other] !== -1) return false;
    to[one] = other;
    to[other] = one;
    waiting.push(one);
    if (one !== other) waiting.push(other);
    return true;
  };
  put(a, b);
  for (let slot = waiting.pop(); slot !== undefined; slot = waiting.pop()) {
    if (to[slot] === slot) continue;
    for (const table of tables) {
      const scope = table.orders[0]!;
      const at = scope.indexOf(slot);
      if (at < 0) continue;
      const image = tables
        .filter(({ kind }) => kind === table.kind)
        .flatMap(({ orders: possible }) => possible)
        .find(
          (other) =>
            other[at] === to[slot] &&
            scope.every((one, place) => {
              const there = other[place]!;
              return to[one] === there || (to[one] === -1 && to[there] === -1);
            }),
        );
      if (image === undefined) return null;
      for (const [place, one] of scope.entries()) if (!put(one, image[place]!)) return null;
    }
  }
  return to.map((slot, at) => (slot === -1 ? at : slot));
}

function holds(network: Network, tables: readonly Kind[], swap: readonly number[]): boolean {
  const named = (move: (slot: number) => number): string[] =>
    tables
      .map(({ kind, orders: possible }) => {
        const texts = possible.map((order) => order.map(move).join(' '));
        return `${texts.sort()[0]!} of kind ${kind}`;
      })
      .sort();
  const sorted = named((slot) => slot);
  const moved = named((slot) => swap[slot]!);
  return (
    sorted.every((table, at) => table === moved[at]) &&
    network.allowed.every((designs, slot) => {
      const others = network.allowed[swap[slot]!]!;
      return designs.length === others.length && designs.every((one, at) => one === others[at]);
    })
  );
}

function alike(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) < 1e-12;
}
