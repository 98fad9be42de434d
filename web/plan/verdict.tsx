import type { VNode } from 'preact';
import { words } from '../words.ts';
import type { OnTable } from './table-of.ts';

/** How good the plan is and how sure that is, in words; the weakest card is a tap away. */
export function Verdict({ table, open }: { table: OnTable; open: (card: number) => void }): VNode {
  const { plan } = table;
  const { weakest } = plan;
  return (
    <section class="verdict" aria-label={words.plan.verdict}>
      <p class="lead">{plan.verdict}</p>
      <p>
        {words.plan.value(plan.value, plan.bound, plan.cards.length)}{' '}
        {words.plan.uses(plan.sheetsUsed.length, plan.fewestSheets, plan.fewestSheetsProven)}{' '}
        {weakest !== null && (
          <button type="button" class="in-text" onClick={() => open(weakest)}>
            {words.plan.weakestIs(weakest)}
          </button>
        )}
      </p>
      {plan.notes.map((note) => (
        <p key={note} class="small">
          {note}
        </p>
      ))}
    </section>
  );
}
