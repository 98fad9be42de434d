import type { VNode } from 'preact';
import { planWords } from '../words/plan.ts';
import { service } from '../wire/service.ts';
import { Answered } from './answered.tsx';
import { ComparedPlan } from './compared-plan.tsx';
import type { ElseProps } from './what-else.tsx';

const COUNT = 3;
/** A gain below this part of the plan is told as none. */
const SEEN = 0.0005;

/** The next best plans, each by the sheets that it changes; one touch has it. */
export function NextPlans({ table, busy, take }: ElseProps): VNode {
  const { plan } = table;
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
                  <ComparedPlan other={other} table={table} />
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
