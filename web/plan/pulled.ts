import { signal } from '@preact/signals';
import type { Spot } from './swap-papers.ts';

/** The paper that is being pulled, and where it would be let go; null while none is. */
export const from = signal<Spot | null>(null);
export const over = signal<Spot | null>(null);
/** Where the finger or the mouse is, in pixels of the window. */
export const at = signal<{ readonly x: number; readonly y: number; readonly finger: boolean }>({
  x: 0,
  y: 0,
  finger: false,
});

export function letGo(): void {
  from.value = null;
  over.value = null;
}
