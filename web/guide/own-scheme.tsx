import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Problem } from '../../server/contract/values.ts';
import { layoutOf } from '../plan/layout-of.ts';
import { Mishap } from '../table/mishap.tsx';
import { schemeWords } from '../words/scheme.ts';
import { asProblem } from '../wire/ask.ts';
import { ticksDone } from './ticked.ts';
import { recut } from './recut.ts';
import { SchemeRows } from './scheme-rows.tsx';
import { choicesOf, chosen, pinsOfPlan, pinsWith, type SheetChoices } from './scheme-sheets.ts';
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
  const pins = plan.asked.pins ?? [];
  const sheetOf = (side: string): string | undefined =>
    pad.sheets.find(({ front, back }) => front?.id === side || back?.id === side)?.id;
  const rows = rowsOf(cuts.slots, (number) => {
    const card = plan.cards.find((one) => one.number === number);
    return card && layoutOf(table, card);
  });
  const [scheme, setScheme] = useState<SchemeTable>(() => tableOf(cuts.slots));
  const [choices, setChoices] = useState<SheetChoices>(() => choicesOf(scheme, pins, sheetOf));
  const [problem, setProblem] = useState<Problem | null>(null);
  const [busy, setBusy] = useState(false);
  const sent = schemeOf(scheme, rows);

  async function have(own: boolean): Promise<void> {
    setBusy(true);
    setProblem(null);
    try {
      const wished = own ? pinsWith(choices, scheme, rows, pins, sheetOf) : pinsOfPlan(pins);
      await recut(table, own ? sent : null, wished);
    } catch (fault) {
      setProblem(asProblem(fault));
    }
    setBusy(false);
  }

  const ticked = ticksDone(plan.id);
  const fresh = scheme.slots.filter((slot) => !cuts.slots.some((one) => one.slot === slot));
  const names = scheme.slots.map((slot) => {
    const now = cuts.slots.find((one) => one.slot === slot)?.name;
    const wanted = pad.sheets.find(({ id }) => id === choices[slot])?.label;
    return { slot, now, name: wanted ?? now ?? schemeWords.fresh(fresh.indexOf(slot) + 1) };
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
      <h3 id="scheme-sheets">{schemeWords.sheets}</h3>
      <ul class="slots-full" aria-labelledby="scheme-sheets">
        {names.map(({ slot, now, name }) => {
          const full = fullness(slot, scheme, rows, pad.sheetSize);
          return (
            <li key={slot} class={full > 1 ? 'too-full' : undefined}>
              <select
                aria-label={schemeWords.whichSheet(name)}
                value={choices[slot] ?? ''}
                onChange={({ currentTarget: { value } }) => {
                  setProblem(null);
                  setChoices(chosen(choices, slot, value));
                }}
              >
                <option value="">{schemeWords.leftOpen(now)}</option>
                {pad.sheets.map(({ id, label }) => (
                  <option key={id} value={id}>
                    {label}
                  </option>
                ))}
              </select>
              <strong>{schemeWords.full(full)}</strong>
            </li>
          );
        })}
      </ul>
      {ticked > 0 && <p>{schemeWords.ticksStay(ticked)}</p>}
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
