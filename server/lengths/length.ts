/**
 * A length on paper as an exact whole number of 1/320 mm, the coarsest unit in which both rulers
 * are whole: 1 mm = 320, 1/64 in = 127, 1 in = 8128 (25.4 x 320).
 */
export type Length = number & { readonly unit: '1/320 mm' };

export type Ruler = 'in' | 'mm';

export interface Size {
  readonly width: Length;
  readonly height: Length;
}

export const MILLIMETRE = 320 as Length;
export const INCH = 8128 as Length;

/** Makes a length of a count of units; throws RangeError when it is not a safe whole number. */
export function units(count: number): Length {
  if (!Number.isSafeInteger(count))
    throw new RangeError(`Expected whole units of 1/320 mm but received ${count}`);
  return count as Length;
}

/** Millimetres as a plain number, for drawing and geometry. */
export function toMillimetres(length: Length): number {
  return length / MILLIMETRE;
}
