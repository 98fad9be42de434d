import { worth } from './network.ts';
import type { Network } from './network.ts';

export interface Kept {
  readonly choice: readonly number[];
  readonly value: number;
}

/** The best few different choices met so far. */
export interface Pool {
  offer(choice: ArrayLike<number>): void;
  /** What a choice must pass to come in: -Infinity while there is room. */
  least(): number;
  /** The best first. */
  best(): readonly Kept[];
}

export function createPool(network: Network, size: number): Pool {
  let kept: Kept[] = [];
  return {
    offer(choice) {
      if (kept.some((other) => other.choice.every((design, slot) => design === choice[slot])))
        return;
      kept = [...kept, { choice: Array.from(choice), value: worth(network, choice) }]
        .sort((a, b) => b.value - a.value)
        .slice(0, size);
    },
    least: () => (kept.length < size ? -Infinity : kept[size - 1]!.value),
    best: () => kept,
  };
}
