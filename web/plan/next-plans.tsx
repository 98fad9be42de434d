import type { VNode } from 'preact';
import { planWords } from '../words/plan.ts';
import { service } from '../wire/service.ts';
import { Answered } from './answered.tsx';
import { OtherCards } from './other-cards.tsx';
import { SwapWords } from './swap-line.tsx';
import type { ElseProps } from './what-else.tsx';

const COUNT = 3;
/** A gain below this part of the plan is told as none. */
const SEEN = 0.0005;

/** The next best plans, each by the sheets that it changes; one touch has it. */
export function NextPlans({ table, busy, take }: ElseProps): VNode {
  const { plan, pad } = table;
  return (
    <Answered
      about={plan.id}
      busy={busy}
      read={(signal) => service.otherPlans(plan.id, COUNT, signal)}
    >
      {(others) =>
        others.length === 0 ? (
          <p>{planWords.else.noOther}</p>
        ) : (
          <>
            {others[0]!.gain > plan.value * SEEN && <p>{planWords.else.better}</p>}
            <ol class="other-plans">
              {others.map((other, at) => (
                <li key={JSON.stringify(other.slots)} class="other-plan">
                  <strong>{planWords.else.compared(other.gain, plan.value)}</strong>
                  <OtherCards other={other} table={table} />
                  <SwapWords swaps={other.swaps} pad={pad} />
                  <button
                    type="button"
                    class="button quiet"
                    disabled={busy}
                    aria-label={planWords.else.takeOther(at + 1)}
                    onClick={() => take(other.slots)}
                  >
                    {planWords.else.take}
                  </button>
                </li>
              ))}
            </ol>
          </>
        )
      }
    </Answered>
  );
}
