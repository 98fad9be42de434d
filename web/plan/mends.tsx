import type { VNode } from 'preact';
import type { Weakest } from '../../server/contract/plans-again.ts';
import { planWords } from '../words/plan.ts';
import { service } from '../wire/service.ts';
import { newerSupplies } from '../supplies/newer-supplies.ts';
import { choosingWords } from '../words/choosing.ts';
import { Answered } from './answered.tsx';
import { slotsOf } from './slots-of.ts';
import { SwapLine } from './swap-line.tsx';
import type { ElseProps } from './what-else.tsx';

/** What would make the weakest card better: another sheet, or a cardstock to buy. */
export function Mends(props: ElseProps): VNode {
  const { plan } = props.table;
  return (
    <Answered about={plan.id} busy={props.busy} read={(signal) => service.weakest(plan.id, signal)}>
      {({ card, mends, taken }) =>
        mends.length === 0 ? (
          <>
            <p>{taken ? planWords.else.mendTaken(card) : planWords.else.noMend}</p>
            <p>{planWords.else.mendNext}</p>
            <button type="button" class="button quiet" onClick={() => props.open(card)}>
              {planWords.else.lookAt(card)}
            </button>
          </>
        ) : (
          <ul class="other-plans">
            {mends.map((mend) => (
              <li key={mend.text} class="other-plan">
                <MendLine {...props} mend={mend} />
              </li>
            ))}
          </ul>
        )
      }
    </Answered>
  );
}

function MendLine({
  table,
  busy,
  take,
  mend,
}: ElseProps & { mend: Weakest['mends'][number] }): VNode {
  const { plan, pad } = table;
  const { swap, wanted } = mend;
  // A cardstock to buy may be the one that she has bought since.
  const newer = newerSupplies(plan, table.supplies).added.some(({ kind }) => kind === 'cardstock');
  return (
    <>
      <strong>{planWords.else.mends(mend.card, mend.plan)}</strong>
      {swap && (
        <>
          <SwapLine swap={swap} pad={pad} />
          <button
            type="button"
            class="button quiet"
            disabled={busy}
            aria-label={planWords.else.takeMend(mend.text)}
            onClick={() => take({ ...slotsOf(plan), [swap.slot]: swap.to })}
          >
            {planWords.else.take}
          </button>
        </>
      )}
      {wanted && newer && <p class="swap-line">{choosingWords.mend}</p>}
      {wanted && !newer && (
        <p class="swap-line">
          <span class="chip big" style={{ background: wanted.hex }} />
          <span>{planWords.else.buy(wanted.name, wanted.layers)}</span>
        </p>
      )}
    </>
  );
}
