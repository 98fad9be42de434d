import { effect, signal, type Signal } from '@preact/signals';

/** A signal that outlives a reload on this device. A full or closed storage only costs the memory, never the work. */
export function remembered<T>(
  key: string,
  first: T,
  fits: (value: unknown) => value is T,
): Signal<T> {
  const kept = signal<T>(recall(key, first, fits));
  effect(() => {
    keep(key, kept.value);
  });
  addEventListener('storage', (event) => {
    if (event.key === name(key)) kept.value = recall(key, first, fits);
  });
  return kept;
}

function name(key: string): string {
  return `plyhue:${key}`;
}

function recall<T>(key: string, first: T, fits: (value: unknown) => value is T): T {
  try {
    const text = localStorage.getItem(name(key));
    const value: unknown = text === null ? null : JSON.parse(text);
    return fits(value) ? value : first;
  } catch {
    return first;
  }
}

function keep(key: string, value: unknown): void {
  const text = JSON.stringify(value);
  try {
    // Writing an equal text would wake the other tabs for nothing.
    if (localStorage.getItem(name(key)) !== text) localStorage.setItem(name(key), text);
  } catch {
    return;
  }
}
