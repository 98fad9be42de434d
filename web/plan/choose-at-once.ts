import { useEffect, useRef, useState } from 'preact/hooks';
import type { Plan } from '../../server/contract/plans.ts';
import type { Supply } from '../../server/contract/supplies.ts';
import { ticksDone } from '../guide/ticked.ts';
import { cameForPlan, wordOf } from '../supplies/came-for-plan.ts';
import { plansOf, ticks } from '../wire/shelves.ts';
import type { OnTable } from './table-of.ts';

/** Cardstock that came, the plan for which all was chosen again because of it, and the one that came of it. */
export interface ChosenFor {
  readonly plan: string;
  readonly made: string;
  readonly added: readonly Supply[];
}

/**
 * Chooses cardstock and inks again, once, when what a plan has to find has come; `choose` takes a word by which two
 * windows that do so at once are known to ask the same. Gives what it was done for, while the plan that came of it
 * is on the table.
 */
export function useChooseAtOnce(
  { plan, pad, supplies }: OnTable,
  busy: boolean,
  choose: (word: string, arrived: (made: Plan) => void) => void,
): ChosenFor | null {
  const tried = useRef<string | null>(null);
  const [chosen, setChosen] = useState<ChosenFor | null>(null);
  const known = ticks.at(plan.id).value.value !== null;
  const done = ticksDone(plan.id);
  const all = plansOf.at(pad.id).value.value ?? [];
  const added = known && !busy ? cameForPlan(plan, supplies, all, done) : [];
  const last = added.at(-1);
  useEffect(() => {
    if (last === undefined || tried.current === plan.id) return;
    tried.current = plan.id;
    choose(wordOf(plan.id), (made) => setChosen({ plan: plan.id, made: made.id, added }));
  }, [plan.id, last?.id]);
  return chosen?.made === plan.id ? chosen : null;
}
