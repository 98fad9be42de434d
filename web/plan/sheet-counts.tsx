import type { VNode } from 'preact';
import { planWords } from '../words/plan.ts';
import { service } from '../wire/service.ts';
import { Answered } from './answered.tsx';
import type { ElseProps } from './what-else.tsx';

/** What fewer sheets cost and more sheets bring, as bars with their words; one touch has it so. */
export function SheetCounts({ table, wishes, busy, wish }: ElseProps): VNode {
  const { plan } = table;
  // A plan that was allowed more sheets than it takes stands where it was allowed.
  const now = wishes.sheets ?? plan.sheetsUsed.length;
  return (
    <>
      <p>{planWords.else.amountLead}</p>
      <Answered
        about={plan.id}
        busy={busy}
        read={(signal) => service.sheetCurve(plan.id, signal)}
        whole={({ complete }) => complete}
      >
        {({ points, complete }) => (
          <ol class="sheet-counts" aria-busy={!complete}>
            {points.map(({ sheets, part }) => (
              <li key={sheets}>
                <button
                  type="button"
                  class="sheet-count"
                  aria-pressed={sheets === now}
                  disabled={busy}
                  onClick={() => wish({ sheets })}
                >
                  <span>
                    {planWords.else.sheets(sheets)}{' '}
                    {sheets === now && <span class="tag">{planWords.else.nowSo}</span>}
                  </span>
                  <span class="count-bar" aria-hidden="true">
                    <span style={{ width: `${100 * part}%` }} />
                  </span>
                  <strong>{planWords.else.part(part)}</strong>
                </button>
              </li>
            ))}
            {!complete && <li class="at-work">{planWords.else.amountMore}</li>}
          </ol>
        )}
      </Answered>
      {wishes.sheets !== undefined && (
        <button
          type="button"
          class="button quiet"
          disabled={busy}
          onClick={() => wish({ sheets: undefined })}
        >
          {planWords.else.fewest}
        </button>
      )}
    </>
  );
}
