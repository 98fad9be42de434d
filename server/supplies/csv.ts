import { CsvError, parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { expected } from '../refusals/refusal.ts';

/** A line of the file with the number of the line on which it starts, from 1. */
export interface CsvRecord {
  readonly line: number;
  readonly fields: readonly string[];
}

/** Comma-separated text as RFC 4180 describes it, whose lines end in CR LF. */
export function csvText(rows: readonly (readonly string[])[]): string {
  // Space at the ends of a field belongs to it (RFC 4180, 2.4), yet many a reader drops it outside quotes; and many
  // a reader, this one too, takes a bare CR or LF for the end of a line.
  return stringify([...rows], { record_delimiter: 'windows', quoted_match: /[\r\n]|^\s|\s$/ });
}

/**
 * Reads comma-separated text (RFC 4180), with CR LF, LF or CR, with or without a byte order mark, empty lines
 * passed over. Refuses quotes that are not closed or not doubled, naming the line.
 */
export function csvRecords(text: string): CsvRecord[] {
  const starts: number[] = [];
  try {
    return parse(text, {
      bom: true,
      relax_column_count: true,
      skip_empty_lines: true,
      record_delimiter: ['\r\n', '\n', '\r'],
      on_record: (fields: string[], { lines }) => {
        starts.push(lines - breaksIn(fields));
        return fields;
      },
    }).map((fields, at) => ({ line: starts[at]!, fields }));
  } catch (fault) {
    if (!(fault instanceof CsvError)) throw fault;
    throw expected(
      'fields whose quotes are doubled and closed',
      `line ${Number(fault.lines)}`,
      text.split(/\r\n|\n|\r/)[Number(fault.lines) - 1]?.slice(0, 40) ?? '',
      'Double every quote inside a quoted field, and close it before the comma.',
    );
  }
}

/** The lines that a record takes beyond its first. */
function breaksIn(fields: readonly string[]): number {
  return fields.reduce((sum, field) => sum + (field.match(/\r\n|\n|\r/g)?.length ?? 0), 0);
}
