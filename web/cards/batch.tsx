import { useEffect, useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { LayoutListing } from '../../server/contract/layouts.ts';
import type { Pad } from '../../server/contract/pads.ts';
import type { PlanSummary } from '../../server/contract/plans.ts';
import type { Problem } from '../../server/contract/values.ts';
import { useLeaveCut } from '../plan/leave-cut.tsx';
import { planNow, planOf } from '../plan/made.ts';
import { makePlan } from '../plan/make-plan.ts';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { cardsWords } from '../words/cards.ts';
import { asProblem } from '../wire/ask.ts';
import { plansOf } from '../wire/shelves.ts';
import { countsOf } from './counts.ts';
import { sheetsFor } from './sheets-needed.ts';

interface Props {
  readonly pad: Pad;
  readonly layouts: readonly LayoutListing[];
  /** The size of card that she looks at. */
  readonly size: string;
}

/** A refusal, and all that it depended on. */
interface Refused {
  readonly about: string;
  readonly problem: Problem;
}

/** The batch so far: how many cards, how many sheets they take, and the way to the plan. */
export function Batch({ pad, layouts, size }: Props): VNode {
  const [refused, setRefused] = useState<Refused | null>(null);
  const [planning, setPlanning] = useState(false);
  const [asking, setAsking] = useState(false);
  const counts = countsOf(pad.id);
  const chosen = layouts.flatMap((layout) => {
    const count = counts[layout.id] ?? 0;
    return count > 0 ? [{ layout, count }] : [];
  });
  // Only the plan of this device is left by another: one that is cut on the tablet stays on its table.
  const mineOf = (known: readonly PlanSummary[] | null): string | null =>
    known === null ? planOf(pad.id) : (known.find(({ id }) => id === planOf(pad.id))?.id ?? null);
  const leave = useLeaveCut(mineOf(plansOf.at(pad.id).value.value));
  const cards = chosen.reduce((sum, { count }) => sum + count, 0);
  const sheets = sheetsFor(chosen, pad.sheetSize);
  const has = pad.sheets.reduce((sum, sheet) => sum + sheet.copies, 0);
  const tooMany = sheets > has;
  // What was refused is no longer what she asks for once a count, the pad or the size is another.
  const about = JSON.stringify([counts, has, size]);
  const problem = refused?.about === about ? refused.problem : null;
  useEffect(() => setRefused(null), [about]);

  /** Her plans may still be on their way: the new one follows the one that she has. */
  async function press(): Promise<void> {
    setAsking(true);
    if (plansOf.at(pad.id).peek().value === null) await plansOf.fresh(pad.id);
    const known = plansOf.at(pad.id).peek().value;
    const before = known === null ? planOf(pad.id) : planNow(pad.id, known);
    await leave.first(() => void plan(before), mineOf(known));
    setAsking(false);
  }

  async function plan(before: string | null): Promise<void> {
    setPlanning(true);
    setRefused(null);
    try {
      await makePlan(
        pad.id,
        chosen.map(({ layout, count }) => ({ layout: layout.id, count })),
        before,
      );
    } catch (fault) {
      setRefused({ about, problem: asProblem(fault) });
    }
    setPlanning(false);
  }

  return (
    <aside class="bar" aria-label={cardsWords.batch}>
      {problem && <Mishap problem={problem} />}
      {leave.question}
      <div class="bar-line">
        <p role="status">
          <strong>{cardsWords.chosen(cards)}</strong>
          {cards > 0 && problem === null && (
            <span class="small">{cardsWords.sheets(sheets, has)}</span>
          )}
        </p>
        <button
          type="button"
          class="button"
          disabled={cards === 0 || tooMany || planning || asking}
          onClick={() => void press()}
        >
          {planning ? cardsWords.planning : cardsWords.plan} <Icon name="next" />
        </button>
      </div>
    </aside>
  );
}
