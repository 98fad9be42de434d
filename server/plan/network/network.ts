import { merged, valueAt } from './factor.ts';
import type { Factor } from './factor.ts';
import type { Kept } from './pool.ts';

/**
 * The cost network over the slots: each variable is a slot, each value a design of the pad, each
 * factor the score of the cards that are cut from these slots. Wanted: the choice of greatest sum in
 * which each slot takes a design that it may and no design is used more often than it has copies.
 */
export interface Network {
  /** The designs that each slot may take. */
  readonly allowed: readonly (readonly number[])[];
  /** Copies of each design. */
  readonly copies: readonly number[];
  /** Each over three slots at most; cards of more stand in `wides`. */
  readonly factors: readonly Factor[];
  readonly wides: readonly Wide[];
}

/**
 * A card over more slots than are worth writing out as one table. Its worth is at most the sum of
 * `upper`, tables over two of its slots each.
 */
export interface Wide {
  /** Slot numbers, ascending. */
  readonly scope: readonly number[];
  readonly upper: readonly Factor[];
  /** The same with tables over three of its slots each: much closer, and longer in the making. */
  readonly closer: () => readonly Factor[];
  /** The same thing for cards that are the same function of the designs in their slots, in order. */
  readonly card: unknown;
  /** The true worth; `choice` holds the design of every slot of the network. */
  at(choice: ArrayLike<number>): number;
  /** The true worth for the designs listed for each slot of `scope`, the last slot running fastest. */
  readonly exact: (designs: readonly (readonly number[])[]) => Float64Array;
}

export interface Solution {
  /** Design of each slot; null when there is no possible choice. */
  readonly choice: readonly number[] | null;
  readonly value: number;
  /** No choice is worth more. */
  readonly bound: number;
  readonly proven: boolean;
  /** The best choices, as many as were asked for and exist, the best first; exact when proven. */
  readonly best: readonly Kept[];
  /** Nodes of the search. */
  readonly steps: number;
}

/** When to stop: after so many nodes, or when `until` says so. */
export type Limit = { readonly steps: number } | { readonly until: () => boolean };

export function worth(network: Network, choice: ArrayLike<number>): number {
  let sum = 0;
  for (const factor of network.factors) sum += valueAt(factor, choice);
  for (const wide of network.wides) sum += wide.at(choice);
  return sum;
}

/** The network with every wide card replaced by its upper tables: never worth less for any choice. */
export function relaxed(network: Network): Network {
  const upper = network.wides.flatMap((wide) => wide.upper);
  return { ...network, factors: merged([...network.factors, ...upper]), wides: [] };
}

/** Differences below this are rounding of sums, not of worth. */
export const HAIR = 1e-9;
