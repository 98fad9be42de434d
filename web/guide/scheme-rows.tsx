import type { VNode } from 'preact';
import { sentence } from '../words/grammar.ts';
import { schemeWords } from '../words/scheme.ts';
import type { Row, SchemeTable } from './scheme-table.ts';

interface Props {
  readonly rows: readonly Row[];
  readonly names: readonly { readonly slot: string; readonly name: string }[];
  readonly table: SchemeTable;
  /** The piece that a refusal speaks of. */
  readonly wrong: string | null;
  readonly move: (row: Row, slot: string | null) => void;
}

/** The table itself: a row a piece, with the sheet that gives it. */
export function SchemeRows({ rows, names, table, wrong, move }: Props): VNode {
  return (
    <table class="scheme">
      <thead>
        <tr>
          <th scope="col">{schemeWords.card}</th>
          <th scope="col">{schemeWords.piece}</th>
          <th scope="col">{schemeWords.from}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row, at) => (
          <tr key={row.key} class={row.key === wrong ? 'wrong' : undefined}>
            <td>{rows[at - 1]?.card === row.card ? '' : row.card}</td>
            <th scope="row">
              {sentence(row.name)} <span class="small">{row.size}</span>
            </th>
            <td>
              <select
                aria-label={schemeWords.sheetOf(row.card, row.name)}
                aria-invalid={row.key === wrong}
                value={table.homes[row.key]}
                onChange={({ currentTarget: { value } }) => move(row, value === '' ? null : value)}
              >
                {names.map(({ slot, name }) => (
                  <option key={slot} value={slot}>
                    {name}
                  </option>
                ))}
                <option value="">{schemeWords.another}</option>
              </select>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
