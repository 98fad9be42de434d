import type { Limit } from './network.ts';
import type { Pool } from './pool.ts';
import type { WideWorth } from './wide-worth.ts';

/** What all parts of one search share. */
export interface Task {
  readonly pool: Pool;
  wides: readonly WideWorth[];
  /** Pairs of slots of which the first takes no later design than the second; see symmetry.ts. */
  readonly rules: readonly (readonly [number, number])[];
  /** Nodes so far. */
  steps: number;
  /** Whether the limit is reached. */
  readonly spent: () => boolean;
  /** Tries a little more for a better plan. */
  readonly kick: () => void;
}

/** A clock is looked at only so often. */
const LOOKS = 64;

/** Whether a limit is reached; once it is, it stays so. */
export function spentBy(limit: Limit, steps: () => number): () => boolean {
  if ('steps' in limit) return () => steps() >= limit.steps;
  let waiting = 0;
  let over = false;
  return () => {
    if (over || waiting-- > 0) return over;
    waiting = LOOKS;
    over = limit.until();
    return over;
  };
}
