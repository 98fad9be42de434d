import type { VNode } from 'preact';
import type { OtherPlan } from '../../server/contract/plans-again.ts';
import { planWords } from '../words/plan.ts';
import { OtherCards } from './other-cards.tsx';
import { SwapLine, SwapWords } from './swap-line.tsx';
import type { OnTable } from './table-of.ts';

/** Another plan beside the one on the table: how much better or less good it is, its cards and what changes over. */
export function ComparedPlan({ other, table }: { other: OtherPlan; table: OnTable }): VNode {
  const { plan, pad } = table;
  return (
    <>
      <strong>{planWords.else.compared(other.gain, plan.value)}</strong>
      <OtherCards other={other} table={table} />
      {other.swaps.length === 1 ? (
        <SwapLine swap={other.swaps[0]!} pad={pad} />
      ) : (
        <SwapWords swaps={other.swaps} pad={pad} />
      )}
    </>
  );
}
