import { Refusal } from '../refusals/refusal.ts';

/** The thing itself, or a refusal that says it was not found, and what to do about it. */
export function found<T>(
  thing: T | null,
  noun: string,
  id: string,
  field = noun,
  mend = `Look it up again; this ${noun} may have been removed.`,
): T {
  if (thing !== null) return thing;
  throw new Refusal({
    kind: 'not-found',
    field,
    received: id,
    message: `Expected ${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun} but found none named "${id.slice(0, 64)}"`,
    mend,
  });
}
