import { useRef } from 'preact/hooks';

/** What stood last, and what it was about. */
export interface Held<T> {
  readonly about: string | null;
  readonly value: T | null;
}

/** What stands once something has come, or has not come yet: the last of the same stays, that of another goes. */
export function heldNow<T>(before: Held<T>, about: string | null, came: T | null): Held<T> {
  if (came !== null) return { about, value: came };
  return about !== null && about === before.about ? before : { about, value: null };
}

/** What stood last about the same stays, with her place in it, until the next is here; about nothing (null) nothing is held. */
export function useHeld<T>(about: string | null, came: T | null): T | null {
  const held = useRef<Held<T>>({ about: null, value: null });
  held.current = heldNow(held.current, about, came);
  return held.current.value;
}
