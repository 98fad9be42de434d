import { worth } from './network.ts';
import type { Network } from './network.ts';
import { settledForm } from './symmetry.ts';

export interface Kept {
  readonly choice: readonly number[];
  readonly value: number;
}

/** The best few choices met so far that differ by more than a symmetry. */
export interface Pool {
  offer(choice: ArrayLike<number>): void;
  /** What a choice must pass to come in: -Infinity while there is room. */
  least(): number;
  /** The best first. */
  best(): readonly Kept[];
}

export function createPool(
  network: Network,
  size: number,
  symmetries: readonly (readonly number[])[],
): Pool {
  let kept: Kept[] = [];
  return {
    offer(offered) {
      const choice = settledForm(symmetries, offered);
      if (kept.some((other) => other.choice.every((design, slot) => design === choice[slot])))
        return;
      kept = [...kept, { choice, value: worth(network, choice) }]
        .sort((a, b) => b.value - a.value)
        .slice(0, size);
    },
    least: () => (kept.length < size ? -Infinity : kept[size - 1]!.value),
    best: () => kept,
  };
}
