import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Refusal } from '../../server/refusals/refusal.ts';
import { csvRecords, csvText } from '../../server/supplies/csv.ts';
import { suppliesFromCsv, suppliesToCsv } from '../../server/supplies/supplies-csv.ts';
import type { ListedSupply } from '../../server/supplies/supplies-csv.ts';

const thousandths = (from: number, to: number): fc.Arbitrary<number> =>
  fc.integer({ min: from * 1000, max: to * 1000 }).map((value) => value / 1000);

const supply: fc.Arbitrary<ListedSupply> = fc.record({
  kind: fc.constantFrom('cardstock' as const, 'ink' as const),
  name: fc.string({ minLength: 1, maxLength: 40 }).filter((name) => name.trim() === name),
  lab: fc.record({ l: thousandths(0, 100), a: thousandths(-100, 100), b: thousandths(-100, 100) }),
  sheets: fc.option(fc.nat({ max: 10_000 })),
});

describe('supplies as comma-separated text', () => {
  test('come back as they went, whatever stands in their names', () => {
    fc.assert(
      fc.property(fc.array(supply, { maxLength: 20 }), (supplies) => {
        expect(suppliesFromCsv(suppliesToCsv(supplies))).toEqual(supplies);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  test('columns may stand in any order, with others between, sheets missing', () => {
    const text = 'Name;ignored'.replace(';', ',') + ',b,a,l,KIND\nKelp,x,30,-11,41,Ink\n';
    expect(suppliesFromCsv(text)).toEqual([
      { kind: 'ink', name: 'Kelp', lab: { l: 41, a: -11, b: 30 }, sheets: null },
    ]);
  });

  test.each([
    ['', 'file', 'column names'],
    ['kind,name,L,a\nink,Kelp,41,0', 'line 1', "'b'"],
    ['kind,name,L,a,b\npaint,Kelp,41,0,0', 'line 2, kind', 'cardstock'],
    ['kind,name,L,a,b\nink,,41,0,0', 'line 2, name', 'name'],
    ['kind,name,L,a,b\nink,"two\nlines",41,0,0', 'line 2, name', 'name'],
    ['kind,name,L,a,b\nink,Kelp,41,0,0\n\nink,Kelp,410,0,0', 'line 4, L', '0 to 100'],
    ['kind,name,L,a,b\nink,Kelp,41,"0,5",0', 'line 2, a', 'number'],
    ['kind,name,L,a,b,sheets\nink,Kelp,41,0,0,-2', 'line 2, sheets', 'whole number'],
    ['kind,name,L,a,b\nink,"Kelp,41,0,0', 'line 2', 'closed'],
    ['kind,name,L,a,b\nink,Ke"lp,41,0,0', 'line 2', 'doubled'],
    [
      'kind,name,note,L,a,b\nink,Kelp,"a\nb",41,0,0\r\n\r\npaint,Kelp,,41,0,0',
      'line 5, kind',
      'ink',
    ],
  ])('%j is refused at %s', (text, field, says) => {
    let caught: unknown = null;
    try {
      suppliesFromCsv(text);
    } catch (fault) {
      caught = fault;
    }
    expect(caught).toBeInstanceOf(Refusal);
    const refusal = caught as Refusal;
    expect(refusal.field).toBe(field);
    expect(refusal.message).toContain(says);
    expect(refusal.mend).not.toBe('');
  });

  // RFC 4180, section 2, rules 5 to 7.
  test('quotes, commas and line breaks inside quotes are read as RFC 4180 has them', () => {
    const text = '"aaa","b\r\nbb","ccc"\r\n"a""b",b,"c,c"\r\n';
    expect(csvRecords(text).map(({ fields }) => fields)).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['a"b', 'b', 'c,c'],
    ]);
    expect(csvText([['a"b', 'b', 'c,c']])).toBe('"a""b",b,"c,c"\r\n');
  });

  // RFC 4180, section 2, rule 6: fields with line breaks stand in quotes; a bare LF or CR is one to every reader that takes either for the end of a line.
  test.each(['\r\n', '\n', '\r'])('a field with %j in it is written in quotes', (end) => {
    expect(csvText([['a', `b${end}b`]])).toBe(`a,"b${end}b"\r\n`);
  });

  test('whatever stands in the fields, they come back as they went', () => {
    const sign = fc.constantFrom('a', 'é', ',', ';', '"', ' ', '\t', '\r', '\n', '\ufeff');
    const field = fc.string({ unit: sign, maxLength: 8 });
    const rows = fc.array(fc.array(field, { minLength: 2, maxLength: 5 }), { maxLength: 6 });
    fc.assert(
      fc.property(rows, (all) => {
        expect(csvRecords(csvText(all)).map(({ fields }) => fields)).toEqual(all);
      }),
      { seed: 12, numRuns: 500 },
    );
  });
});
