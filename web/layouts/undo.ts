/** What was drawn before, what stands now, and what was taken back. */
export interface Drawn<T> {
  readonly past: readonly T[];
  readonly now: T;
  readonly future: readonly T[];
}

export function begun<T>(now: T): Drawn<T> {
  return { past: [], now, future: [] };
}

/** A step that changes nothing is no step; a new step ends what could be redone. */
export function changed<T>(drawn: Drawn<T>, now: T): Drawn<T> {
  if (JSON.stringify(now) === JSON.stringify(drawn.now)) return drawn;
  return { past: [...drawn.past, drawn.now], now, future: [] };
}

export function undone<T>({ past, now, future }: Drawn<T>): Drawn<T> {
  const before = past.at(-1);
  if (before === undefined) return { past, now, future };
  return { past: past.slice(0, -1), now: before, future: [now, ...future] };
}

export function redone<T>({ past, now, future }: Drawn<T>): Drawn<T> {
  const [after, ...rest] = future;
  if (after === undefined) return { past, now, future };
  return { past: [...past, now], now: after, future: rest };
}
