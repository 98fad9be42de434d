import { expected } from '../refusals/refusal.ts';
import { INCH, MILLIMETRE, units } from './length.ts';
import type { Length } from './length.ts';

/** Nothing on a craft table is longer: a metre. */
export const LONGEST = units(1000 * MILLIMETRE);

const MEND = 'Write a number with its unit, like 4 1/4 in, 5¾ in, 108 mm or 14,6 cm.';

const UNITS: readonly (readonly [RegExp, number])[] = [
  [/^(?:in|ins|inch|inches|"|″|”|'')\.?$/, INCH],
  [/^(?:mm|millimet(?:er|re)s?)\.?$/, MILLIMETRE],
  [/^(?:cm|centimet(?:er|re)s?)\.?$/, 10 * MILLIMETRE],
];

/**
 * Reads a length as a person writes it: `4 1/4 in`, `5-3/4"`, `5¾ in`, `14,6 cm`, `108 mm`.
 *
 * Takes    a number (whole, decimal with point or comma, fraction, or whole with fraction) and its
 *          unit (in, mm, cm and their long forms); a length above 0 and up to 1 m.
 * Gives    the length in 1/320 mm; exact for 1/64 in and 0.1 mm and their multiples, otherwise the
 *          nearest 1/320 mm.
 * Refuses  anything else, with the field it was asked for.
 */
export function parseLength(text: string, field = 'length'): Length {
  const length = read(text, field);
  checkAboveZero(length, text, field);
  return length;
}

/** Reads where something lies, measured from an edge: like a length, but 0 is allowed (`0 in`). */
export function parsePosition(text: string, field = 'position'): Length {
  const length = read(text, field);
  if (length < 0)
    throw expected('a distance of 0 or more', field, text, 'Measure from the left or upper edge.');
  return length;
}

function read(text: string, field: string): Length {
  const parts = /^\s*([-−–]?)\s*([\d.,/\s¼½¾⅛⅜⅝⅞⁄–-]*?)\s*([a-z"″”'.]*)\s*$/iu.exec(text);
  const unit = parts && unitOf(parts[3]!.toLowerCase());
  const value = parts && numberOf(parts[2]!);
  if (unit === null || value === null)
    throw expected('a length with its unit', field, text, MEND, 'not-understood');
  const sign = parts![1] === '' ? 1 : -1;
  const length = sign * Math.round((value.over * unit) / value.under);
  checkWithinReach(length, text, field);
  return units(length === 0 ? 0 : length);
}

function unitOf(word: string): number | null {
  return UNITS.find(([pattern]) => pattern.test(word))?.[1] ?? null;
}

interface Fraction {
  readonly over: number;
  readonly under: number;
}

const VULGAR: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

function numberOf(text: string): Fraction | null {
  const plain = text.replace(/\s*([¼½¾⅛⅜⅝⅞])/gu, (_, sign: string) => ` ${VULGAR[sign]!}`);
  const decimal = /^(\d{1,6})?(?:[.,](\d{1,6}))?$/.exec(plain.trim());
  if (decimal && plain.trim() !== '') {
    const [, whole = '0', part = ''] = decimal;
    return { over: Number(whole + part), under: 10 ** part.length };
  }
  const mixed = /^(?:(\d{1,6})(?:\s*[-–]\s*|\s+))?(\d{1,4})\s*[/⁄]\s*(\d{1,4})$/u.exec(
    plain.trim(),
  );
  if (!mixed) return null;
  const [, whole = '0', over = '', under = ''] = mixed;
  if (Number(under) === 0) return null;
  return { over: Number(whole) * Number(under) + Number(over), under: Number(under) };
}

function checkAboveZero(length: number, text: string, field: string): void {
  if (length <= 0)
    throw expected('a length above 0', field, text, 'Write how long it is, like 1/8 in or 3 mm.');
}

function checkWithinReach(length: number, text: string, field: string): void {
  if (Math.abs(length) > LONGEST)
    throw expected(
      'a length of at most 1 m',
      field,
      text,
      'Check the unit: 108 mm, not 108 in.',
      'too-large',
    );
}
