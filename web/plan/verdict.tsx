import type { VNode } from 'preact';
import { planWords } from '../words/plan.ts';
import type { OnTable } from './table-of.ts';

interface VerdictProps {
  readonly table: OnTable;
  /** Has all papers chosen anew; null where they are, or where it is offered elsewhere. */
  readonly anew: (() => void) | null;
}

/** How good the plan is and how sure that is, in a sentence above its pictures. */
export function Verdict({ table, anew }: VerdictProps): VNode {
  return (
    <p class="lead">
      {table.plan.verdict}
      {anew && (
        <>
          {' '}
          <button type="button" class="in-text" onClick={anew}>
            {planWords.changed.anew}
          </button>
        </>
      )}
    </p>
  );
}

/** The same in figures, below the pictures; the weakest card is a tap away. */
export function VerdictMore({
  table,
  open,
}: {
  table: OnTable;
  open: (card: number) => void;
}): VNode {
  const { plan } = table;
  const { weakest } = plan;
  const byTaste = Object.values(plan.asked.taste ?? {}).some((wish) => wish !== 0);
  return (
    <section class="verdict" aria-label={planWords.verdict}>
      <p>
        {planWords.value(plan.value, plan.bound, plan.cards.length, byTaste)}{' '}
        {planWords.uses(plan.sheetsUsed.length, plan.fewestSheets, plan.fewestSheetsProven)}{' '}
        {weakest !== null && (
          <button type="button" class="in-text" onClick={() => open(weakest)}>
            {planWords.weakestIs(weakest)}
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
