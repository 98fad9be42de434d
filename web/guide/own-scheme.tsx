import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Problem } from '../../server/contract/values.ts';
import { layoutOf } from '../plan/layout-of.ts';
import { Mishap } from '../table/mishap.tsx';
import { schemeWords } from '../words/scheme.ts';
import { asProblem } from '../wire/ask.ts';
import { recut } from './recut.ts';
import { SchemeRows } from './scheme-rows.tsx';
import {
  fullness,
  moved,
  refusedKey,
  rowsOf,
  schemeOf,
  tableOf,
  type SchemeTable,
} from './scheme-table.ts';
import type { GuideBook } from './steps-of.ts';

/** Her own cutting table: which sheet gives which piece to which card. Its cuts are worked out. */
export function OwnScheme({ book }: { book: GuideBook }): VNode {
  const { table, cuts } = book;
  const { plan, pad } = table;
  const rows = rowsOf(cuts.slots, (number) => {
    const card = plan.cards.find((one) => one.number === number);
    return card && layoutOf(table, card);
  });
  const [scheme, setScheme] = useState<SchemeTable>(() => tableOf(cuts.slots));
  const [problem, setProblem] = useState<Problem | null>(null);
  const [busy, setBusy] = useState(false);
  const sent = schemeOf(scheme, rows);

  async function have(own: boolean): Promise<void> {
    setBusy(true);
    setProblem(null);
    try {
      await recut(table, own ? sent : null);
    } catch (fault) {
      setProblem(asProblem(fault));
    }
    setBusy(false);
  }

  const names = scheme.slots.map((slot, at) => {
    const sheet = plan.sheetsUsed.find((one) => one.slot === slot)?.sheet;
    const label = pad.sheets.find(({ id }) => id === sheet)?.label;
    return { slot, name: schemeWords.slot(at + 1, label ?? null) };
  });
  return (
    <>
      <p>{schemeWords.lead}</p>
      <SchemeRows
        rows={rows}
        names={names}
        table={scheme}
        wrong={refusedKey(problem?.field, sent)}
        move={(row, slot) => {
          setProblem(null);
          setScheme(moved(scheme, rows, row, slot));
        }}
      />
      <ul class="slots-full" aria-label={schemeWords.howFull}>
        {names.map(({ slot, name }) => {
          const full = fullness(slot, scheme, rows, pad.sheetSize);
          return (
            <li key={slot} class={full > 1 ? 'too-full' : undefined}>
              <span>{name}</span>
              <strong>{schemeWords.full(full)}</strong>
            </li>
          );
        })}
      </ul>
      {problem && <Mishap problem={problem} />}
      <div class="onward">
        {plan.asked.scheme !== undefined && (
          <button
            type="button"
            class="button quiet"
            disabled={busy}
            onClick={() => void have(false)}
          >
            {schemeWords.ours}
          </button>
        )}
        <button type="button" class="button" disabled={busy} onClick={() => void have(true)}>
          {busy ? schemeWords.working : schemeWords.have}
        </button>
      </div>
    </>
  );
}
