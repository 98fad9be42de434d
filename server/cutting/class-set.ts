import type { CuttingScheme } from './piece.ts';
import { stacksOf } from './stacks.ts';

/** Sheets under the blade at once: how many of each slot, all cut alike. */
export interface ClassStack {
  readonly of: readonly { readonly slot: string; readonly sheets: number }[];
  readonly sheets: number;
}

/** A batch cut for several people, each of whom gets the whole batch. */
export interface ClassSet {
  readonly people: number;
  /** In all; each slot is cut once for each person. */
  readonly sheets: number;
  readonly stacks: readonly ClassStack[];
}

/**
 * The same batch for so many people: every slot is needed once for each, and what is cut alike is
 * stacked, sheets of one slot beside each other. No stack is higher than `most`, and of sheets cut
 * alike only the last may be lower.
 */
export function classSet(scheme: CuttingScheme, people: number, most: number): ClassSet {
  const stacks = stacksOf(scheme, scheme.slots.length).flatMap(({ slots }) =>
    piled(
      slots.flatMap((slot) => Array.from({ length: people }, () => slot)),
      most,
    ),
  );
  return { people, sheets: people * scheme.slots.length, stacks };
}

function piled(slots: readonly string[], most: number): ClassStack[] {
  return Array.from({ length: Math.ceil(slots.length / most) }, (_, index) => {
    const pile = slots.slice(index * most, (index + 1) * most);
    const of = [...new Set(pile)].map((slot) => ({
      slot,
      sheets: pile.filter((one) => one === slot).length,
    }));
    return { of, sheets: pile.length };
  });
}
