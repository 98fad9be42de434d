import { signal, type ReadonlySignal, type Signal } from '@preact/signals';
import type { Problem } from '../../server/contract/values.ts';
import { asProblem } from './ask.ts';

/** A value that is being fetched, is here, or was refused; an older value stays while a new one comes. */
export interface Kept<T> {
  readonly value: T | null;
  readonly problem: Problem | null;
  readonly waiting: boolean;
}

/** Values of the service by key, fetched once and shared by all components that look at them. */
export interface Shelf<T> {
  /** The value at a key; asks for it when it was never asked for. */
  at(key: string): ReadonlySignal<Kept<T>>;
  /** Asks again; what is shown stays until the answer is here. */
  fresh(key: string): Promise<void>;
  /** Asks again for everything that someone has looked at. */
  freshAll(): void;
  /** Puts in a value that another answer brought along. */
  put(key: string, value: T): void;
}

export function shelfOf<T>(read: (key: string) => Promise<T>): Shelf<T> {
  const places = new Map<string, Signal<Kept<T>>>();

  function place(key: string): Signal<Kept<T>> {
    let found = places.get(key);
    if (!found) {
      found = signal<Kept<T>>({ value: null, problem: null, waiting: true });
      places.set(key, found);
      void fetchInto(key, found);
    }
    return found;
  }

  async function fetchInto(key: string, into: Signal<Kept<T>>): Promise<void> {
    into.value = { ...into.peek(), waiting: true };
    try {
      const value = await read(key);
      // An equal answer keeps the value as it is, so that nothing is drawn again.
      const same = JSON.stringify(value) === JSON.stringify(into.peek().value);
      into.value = { value: same ? into.peek().value : value, problem: null, waiting: false };
    } catch (fault) {
      into.value = { value: into.peek().value, problem: asProblem(fault), waiting: false };
    }
  }

  return {
    at: place,
    fresh: async (key) => {
      await fetchInto(key, place(key));
    },
    freshAll: () => {
      for (const [key, found] of places) if (!found.peek().waiting) void fetchInto(key, found);
    },
    put: (key, value) => {
      const now = { value, problem: null, waiting: false };
      const found = places.get(key);
      if (found) found.value = now;
      else places.set(key, signal<Kept<T>>(now));
    },
  };
}
