import { expected } from '../refusals/refusal.ts';

/** A line of the file with the number of the line on which it starts, from 1. */
export interface CsvRecord {
  readonly line: number;
  readonly fields: readonly string[];
}

/**
 * Comma-separated text as RFC 4180 describes it: fields that hold a comma, a quote or a line break are
 * quoted, quotes in them doubled; lines end in CR LF.
 */
export function csvText(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(quoted).join(',')}\r\n`).join('');
}

function quoted(field: string): string {
  return /[",\r\n]|^\s|\s$/.test(field) ? `"${field.replaceAll('"', '""')}"` : field;
}

/**
 * Reads comma-separated text (RFC 4180), with CR LF or LF alone, with or without a byte order mark, empty
 * lines passed over. Refuses a quoted field that is never closed.
 */
export function csvRecords(text: string): CsvRecord[] {
  const whole = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const records: CsvRecord[] = [];
  const token = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r?\n|\r|$)/y;
  let [line, start, fields] = [1, 1, [] as string[]];
  while (token.lastIndex < whole.length || fields.length > 0) {
    const at = token.lastIndex;
    const found = token.exec(whole);
    if (found === null)
      throw expected(
        'a quoted field that is closed again',
        `line ${line}`,
        whole.slice(at, at + 40),
        'Double every quote inside a quoted field, and close it before the comma.',
      );
    const [all, inQuotes, plain = '', end] = found;
    fields.push(inQuotes === undefined ? plain : inQuotes.replaceAll('""', '"'));
    line += (all.match(/\r\n|\n|\r/g) ?? []).length;
    if (end === ',') continue;
    if (fields.length > 1 || fields[0] !== '') records.push({ line: start, fields });
    [start, fields] = [line, []];
  }
  return records;
}
