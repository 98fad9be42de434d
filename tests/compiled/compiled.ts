import { join } from 'node:path';
import { inject } from 'vitest';
import { placeOf } from './place-of.ts';

/** Where a source file stands as JavaScript, for tests that run it in a process of its own. */
export function compiled(file: string): string {
  return join(inject('compiled'), placeOf(file));
}
