/**
 * A value as the text that is kept of it.
 *
 * Throws a TypeError for a number that is none (NaN, infinite): JSON would keep it as null, and what was kept
 * could never be read again.
 */
export function docOf(value: unknown): string {
  return JSON.stringify(value, (key, part: unknown) => {
    if (typeof part === 'number' && !Number.isFinite(part))
      throw new TypeError(`Expected a finite number as ${key} but received ${part}`);
    return part;
  });
}
