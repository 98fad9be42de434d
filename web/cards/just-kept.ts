import { signal } from '@preact/signals';

/** The layout that she has kept last, until she leaves the page: it is brought before her eyes. */
export const justKept = signal<string | null>(null);
