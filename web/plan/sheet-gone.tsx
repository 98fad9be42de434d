import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import { swatchAt } from '../pad/swatch-at.ts';
import { planWords } from '../words/plan.ts';
import { service } from '../wire/service.ts';
import { Answered } from './answered.tsx';
import { ComparedPlan } from './compared-plan.tsx';
import { sheetIn } from './swap-line.tsx';
import type { ElseProps } from './what-else.tsx';
import { pinsOnSheet } from './pins-on-sheet.ts';

/** What the plan becomes without one of its sheets; and the sheets left out so far, to be used again. */
export function SheetGone(props: ElseProps): VNode {
  const { table } = props;
  const [gone, setGone] = useState<string | null>(null);
  const used = [...new Set(table.plan.sheetsUsed.map(({ sheet }) => sheet))];
  return (
    <>
      <p>{planWords.else.goneLead}</p>
      <ul class="swatch-row">
        {used.map((sheet) => (
          <li key={sheet}>
            <button
              type="button"
              class="swatch-button"
              aria-pressed={sheet === gone}
              onClick={() => setGone(sheet === gone ? null : sheet)}
            >
              <BothSides pad={table.pad} sheet={sheet} />
              <span class="small">{sheetIn(table.pad, sheet)?.label}</span>
            </button>
          </li>
        ))}
      </ul>
      {gone !== null && used.includes(gone) && <Gone {...props} sheet={gone} />}
      <LeftOut {...props} />
    </>
  );
}

/** A sheet in her hand shows either side: both stand there, the front first. */
function BothSides({ pad, sheet }: { pad: Pad; sheet: string }): VNode {
  const { front = null, back = null } = sheetIn(pad, sheet) ?? {};
  return (
    <span class="both-sides">
      {[front, back].map(
        (side) =>
          side && (
            <img
              key={side.id}
              src={swatchAt(side.swatch, 84)}
              alt=""
              width="64"
              height="64"
              loading="lazy"
            />
          ),
      )}
    </span>
  );
}

/** A sheet that she keeps on a card cannot be left out as well: then both are offered in one touch. */
function Gone(props: ElseProps & { sheet: string }): VNode {
  const { table, wishes, busy, wish, sheet } = props;
  const keeping = pinsOnSheet(table.pad, wishes.pins ?? [], sheet);
  if (keeping.length === 0) return <Without {...props} />;
  const label = sheetIn(table.pad, sheet)?.label ?? '';
  const cards = [...new Set(keeping.map(({ card }) => card))].sort((a, b) => a - b);
  return (
    <div class="other-plan">
      <strong>{planWords.else.keptOn(label, cards)}</strong>
      <button
        type="button"
        class="button quiet"
        disabled={busy}
        onClick={() =>
          wish({
            pins: (wishes.pins ?? []).filter((pin) => !keeping.includes(pin)),
            without: [...(wishes.without ?? []), sheet],
          })
        }
      >
        {planWords.else.letGo(label)}
      </button>
    </div>
  );
}

function Without({ table, wishes, busy, wish, sheet }: ElseProps & { sheet: string }): VNode {
  const { plan, pad } = table;
  const label = sheetIn(pad, sheet)?.label ?? '';
  return (
    <Answered
      about={`${plan.id} ${sheet}`}
      busy={busy}
      read={(signal) => service.withoutSheet(plan.id, sheet, signal)}
    >
      {(other) => (
        <div class="other-plan">
          <ComparedPlan other={other} table={table} />
          <button
            type="button"
            class="button quiet"
            disabled={busy}
            onClick={() => wish({ without: [...(wishes.without ?? []), sheet] })}
          >
            {planWords.else.leaveOut(label)}
          </button>
        </div>
      )}
    </Answered>
  );
}

function LeftOut({ table, wishes, busy, wish }: ElseProps): VNode | null {
  const without = wishes.without ?? [];
  if (without.length === 0) return null;
  return (
    <>
      <h3>{planWords.else.leftOut}</h3>
      <ul class="swatch-row">
        {without.map((sheet) => (
          <li key={sheet}>
            <button
              type="button"
              class="button quiet"
              disabled={busy}
              onClick={() => wish({ without: without.filter((one) => one !== sheet) })}
            >
              {planWords.else.useAgain(sheetIn(table.pad, sheet)?.label ?? '')}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
