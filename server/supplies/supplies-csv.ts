import type { Lab } from '../colour/lab.ts';
import { expected } from '../refusals/refusal.ts';
import { csvRecords, csvText } from './csv.ts';
import type { SupplyKind } from './supply.ts';

/** A supply as a line of the file holds it. */
export interface ListedSupply {
  readonly kind: SupplyKind;
  readonly name: string;
  readonly lab: Lab;
  readonly sheets: number | null;
}

export const COLUMNS = ['kind', 'name', 'L', 'a', 'b', 'sheets'] as const;
type Column = (typeof COLUMNS)[number];

/** More than anyone keeps on a shelf. */
const MOST = 2000;
const MOST_SHEETS = 10_000;

/** Her supplies as plain comma-separated text, with a head; colours to 1/1000 of a CIELAB unit. */
export function suppliesToCsv(supplies: readonly ListedSupply[]): string {
  const rows = supplies.map(({ kind, name, lab, sheets }) => [
    kind,
    name,
    rounded(lab.l),
    rounded(lab.a),
    rounded(lab.b),
    sheets === null ? '' : String(sheets),
  ]);
  return csvText([[...COLUMNS], ...rows]);
}

/**
 * Reads supplies from comma-separated text.
 *
 * Takes       a first line that names the columns kind, name, L, a, b, in any order and any case; sheets may
 *             be missing or empty; other columns are passed over. Fields may be quoted.
 * Refuses     a missing column, an unknown kind, an empty name, a number that is none or out of range,
 *             naming the line and the column; more than 2000 lines.
 */
export function suppliesFromCsv(text: string): ListedSupply[] {
  const [head, ...records] = csvRecords(text);
  if (head === undefined) throw expected('a line of column names', 'file', text, MEND);
  const columns = columnsOf(head.fields);
  if (records.length > MOST)
    throw expected(
      `at most ${MOST} supplies`,
      'file',
      records.length,
      'Split the file.',
      'too-large',
    );
  return records.map(({ fields, line }) => {
    const value = (column: Column): string => (fields[columns.get(column) ?? -1] ?? '').trim();
    return {
      kind: kindOf(value('kind'), line),
      name: nameIn(value('name'), line),
      lab: {
        l: numberIn(value('L'), line, 'L', 0, 100),
        a: numberIn(value('a'), line, 'a', -200, 200),
        b: numberIn(value('b'), line, 'b', -200, 200),
      },
      sheets: sheetsIn(value('sheets'), line),
    };
  });
}

const MEND = 'Let the first line be: kind,name,L,a,b,sheets';

function columnsOf(head: readonly string[]): Map<Column, number> {
  const names = head.map((name) => name.trim().toLowerCase());
  const found = new Map<Column, number>();
  for (const column of COLUMNS) {
    const at = names.indexOf(column.toLowerCase());
    if (at >= 0) found.set(column, at);
    else if (column !== 'sheets') throw expected(`a column '${column}'`, 'line 1', head, MEND);
  }
  return found;
}

function kindOf(text: string, line: number): SupplyKind {
  const kind = text.toLowerCase();
  if (kind === 'cardstock' || kind === 'ink') return kind;
  throw expected("'cardstock' or 'ink'", `line ${line}, kind`, text, 'Write one of the two words.');
}

function nameIn(text: string, line: number): string {
  if (text !== '' && text.length <= 80 && !/[\u0000-\u001f\u007f]/.test(text)) return text;
  throw expected(
    'a name of 1 to 80 letters',
    `line ${line}, name`,
    text,
    'Give each supply a short name of your own.',
  );
}

function numberIn(text: string, line: number, column: Column, from: number, to: number): number {
  const value = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(text) ? Number(text) : NaN;
  if (value >= from && value <= to) return value;
  throw expected(
    `a number from ${from} to ${to}`,
    `line ${line}, ${column}`,
    text,
    'Write it with a decimal point, like 62.5.',
  );
}

function sheetsIn(text: string, line: number): number | null {
  if (text === '') return null;
  if (/^\d{1,5}$/.test(text) && Number(text) <= MOST_SHEETS) return Number(text);
  throw expected(
    `a whole number from 0 to ${MOST_SHEETS}`,
    `line ${line}, sheets`,
    text,
    'Write how many sheets are left, or leave it empty.',
  );
}

function rounded(value: number): string {
  return String(Math.round(value * 1000) / 1000 + 0);
}
