import type { VNode } from 'preact';
import type { Supply } from '../../server/contract/supplies.ts';
import { planNow } from '../plan/made.ts';
import { stockPaper } from '../table/settings.ts';
import { Once } from '../table/waiting.tsx';
import { matchWords } from '../words/match.ts';
import { bestOfPlan, pads, plansOf } from '../wire/shelves.ts';
import { BestBoard } from './best-board.tsx';

/** For the plan of a pad that is on the table: the best of her supplies, and the shopping list. */
export function PlanSupplies({
  pad,
  supplies,
}: {
  pad: string;
  supplies: readonly Supply[];
}): VNode | null {
  const made = plansOf.at(pad).value.value ?? [];
  const now = planNow(pad, made);
  const latest = made.find(({ id }) => id === now);
  if (latest === undefined) return null;
  const inches = pads.at(pad).value.value?.sheetSize.width.endsWith('in') ?? false;
  // Asked anew when her supplies change: the key names them.
  const key = `${latest.id}/${stockPaper.value}/${supplies.map(({ id, revision }) => `${id}.${revision}`).join()}`;
  return (
    <section aria-labelledby="for-plan">
      <h2 id="for-plan">{matchWords.forPlan(latest.cards)}</h2>
      <Once of={bestOfPlan.at(key)} again={() => void bestOfPlan.fresh(key)} about={pad}>
        {(best) => (
          <BestBoard
            best={best}
            inches={inches}
            hasInk={supplies.some(({ kind }) => kind === 'ink')}
          />
        )}
      </Once>
    </section>
  );
}
