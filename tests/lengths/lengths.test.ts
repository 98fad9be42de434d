import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactLength, formatLength, formatSize } from '../../server/lengths/format-length.ts';
import { INCH, MILLIMETRE, units } from '../../server/lengths/length.ts';
import { LONGEST, parseLength, parsePosition } from '../../server/lengths/parse-length.ts';
import { parseSize } from '../../server/lengths/parse-size.ts';
import { isOnRuler, snap } from '../../server/lengths/ruler.ts';
import { Refusal } from '../../server/refusals/refusal.ts';

fc.configureGlobal({ seed: 20 });

const anyLength = fc.integer({ min: 1, max: LONGEST - INCH }).map(units);
const anyRuler = fc.constantFrom('in' as const, 'mm' as const);

describe('reading a length as a person writes it', () => {
  it.each([
    ['4 1/4 in', 4.25 * INCH],
    ['5-3/4"', 5.75 * INCH],
    ['5 - 3/4 in', 5.75 * INCH],
    ['5¾ in', 5.75 * INCH],
    ['5 ¾″', 5.75 * INCH],
    ['⅛ in', INCH / 8],
    ['1/16 inch', INCH / 16],
    ['4.25in', 4.25 * INCH],
    ['.5 in', INCH / 2],
    ['6 inches', 6 * INCH],
    ['6 Inches', 6 * INCH],
    ["8''", 8 * INCH],
    ['14,6 cm', 146 * MILLIMETRE],
    ['14.6cm', 146 * MILLIMETRE],
    ['108 mm', 108 * MILLIMETRE],
    ['  108  millimetres ', 108 * MILLIMETRE],
    ['0,1 mm', MILLIMETRE / 10],
    ['1 000 mm'.replace(' ', ''), 1000 * MILLIMETRE],
  ])('reads %s', (text, length) => {
    expect(parseLength(text)).toBe(length);
  });

  it('knows that an inch is 25.4 mm exactly (international yard and pound agreement, 1959)', () => {
    expect(parseLength('1 in')).toBe(parseLength('25.4 mm'));
    expect(parseLength('6 in')).toBe(parseLength('15,24 cm'));
  });

  it.each([
    '',
    'in',
    '6',
    'six in',
    '1/0 in',
    '4 1 in',
    '4 1/ in',
    '1/2/3 in',
    '6 ft',
    '4,2,5 in',
    '--2 in',
    'NaN mm',
    '1e3 mm',
  ])('refuses "%s" and names the field, the value and the mend', (text) => {
    const refusal = refusalOf(() => parseLength(text, 'card.width'));
    expect(refusal).toMatchObject({ kind: 'not-understood', field: 'card.width', received: text });
    expect(refusal.mend).toContain('4 1/4 in');
  });

  it.each(['0 in', '-3 mm', '- 1/4 in'])('refuses %s: nothing is that long', (text) => {
    expect(refusalOf(() => parseLength(text)).message).toContain('a length above 0');
  });

  it('refuses more than a metre as too large and asks after the unit', () => {
    expect(parseLength('1000 mm')).toBe(LONGEST);
    const refusal = refusalOf(() => parseLength('108 in'));
    expect(refusal.kind).toBe('too-large');
    expect(refusal.mend).toContain('unit');
  });

  it('lets a position be 0, though not below', () => {
    expect(parsePosition('0 in')).toBe(0);
    expect(parsePosition('1/8 in')).toBe(INCH / 8);
    expect(() => parsePosition('-1 mm')).toThrow(Refusal);
  });
});

describe('writing a length', () => {
  it.each([
    [4.25 * INCH, 'in', '4 1/4 in'],
    [INCH / 8, 'in', '1/8 in'],
    [6 * INCH, 'in', '6 in'],
    [2.625 * INCH, 'in', '2 5/8 in'],
    [0, 'in', '0 in'],
    [108 * MILLIMETRE, 'mm', '108 mm'],
    [4.25 * INCH, 'mm', '108 mm'],
    [148 * MILLIMETRE, 'in', '5 13/16 in'],
  ] as const)('writes %i on the %s ruler as %s', (length, ruler, text) => {
    expect(formatLength(units(length), ruler)).toBe(text);
  });

  it('gives back the same length when it stands on the ruler, and the nearest mark when not', () => {
    fc.assert(
      fc.property(anyLength, anyRuler, (length, ruler) => {
        const read = parsePosition(formatLength(length, ruler));
        expect(read).toBe(snap(length, ruler));
        expect(read === length).toBe(isOnRuler(length, ruler));
        expect(Math.abs(read - length) * 2).toBeLessThanOrEqual(ruler === 'in' ? 508 : 320);
      }),
    );
  });

  it('has an exact form for the wire that always reads back the same', () => {
    fc.assert(
      fc.property(anyLength, anyRuler, (length, ruler) => {
        expect(parseLength(exactLength(length, ruler))).toBe(length);
      }),
    );
    expect(exactLength(units((INCH * 5) / 32), 'in')).toBe('5/32 in');
    expect(exactLength(units(MILLIMETRE * 3), 'in')).toBe('3 mm');
  });
});

describe('sizes', () => {
  it.each([
    ['6 x 6 in', 6 * INCH, 6 * INCH],
    ['4 1/4 in x 5 1/2 in', 4.25 * INCH, 5.5 * INCH],
    ['8½ × 11"', 8.5 * INCH, 11 * INCH],
    ['105 x 148 mm', 105 * MILLIMETRE, 148 * MILLIMETRE],
    ['15 by 15 cm', 150 * MILLIMETRE, 150 * MILLIMETRE],
  ])('reads %s', (text, width, height) => {
    expect(parseSize(text)).toEqual({ width, height });
  });

  it('writes the unit once', () => {
    expect(formatSize(parseSize('4 1/4 in x 5 1/2 in'), 'in')).toBe('4 1/4 x 5 1/2 in');
    expect(formatSize(parseSize('105 x 148 mm'), 'mm')).toBe('105 x 148 mm');
  });

  it.each(['6 in', '6 x 6', '6 x 6 x 6 in', 'x 6 in'])('refuses %s', (text) => {
    expect(() => parseSize(text, 'sheetSize')).toThrow(/sheetSize/);
  });
});

function refusalOf(act: () => unknown): Refusal {
  try {
    act();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}
