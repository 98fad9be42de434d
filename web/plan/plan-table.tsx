import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Problem } from '../../server/contract/values.ts';
import { announce } from '../table/announce.tsx';
import { Icon } from '../table/icon.tsx';
import { Link } from '../table/link.tsx';
import { Mishap } from '../table/mishap.tsx';
import { settle } from '../table/way.ts';
import { words } from '../words.ts';
import { asProblem } from '../wire/ask.ts';
import { CardSheet } from './card-sheet.tsx';
import { replan, takePlan } from './make-plan.ts';
import { PlannedPicture } from './planned-picture.tsx';
import type { Step, Wishes } from './steps.ts';
import type { OnTable } from './table-of.ts';
import { TasteSliders } from './taste-sliders.tsx';
import { StepButtons } from './step-buttons.tsx';
import { useStepKeys } from './step-keys.ts';
import { wishesOf } from './wishes.ts';
import { Verdict } from './verdict.tsx';
import { WhatElse } from './what-else.tsx';

/** The cards of a plan on the table, with what can be wished for differently. */
export function PlanTable(table: OnTable): VNode {
  const { plan, pad } = table;
  const [open, setOpen] = useState<number | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [busy, setBusy] = useState(false);
  const wishes = wishesOf(plan);

  function showStep(step: Step): void {
    settle({ at: 'plan', pad: pad.id, plan: step.plan });
  }
  useStepKeys(pad.id, plan.id, showStep);

  const wish = (change: Partial<Wishes>): Promise<void> =>
    anew(() => replan(pad.id, { ...wishes, ...change }, plan.id));

  async function anew(make: () => Promise<void>): Promise<void> {
    setBusy(true);
    setProblem(null);
    try {
      await make();
      announce(words.plan.replanned);
    } catch (fault) {
      setProblem(asProblem(fault));
    }
    setBusy(false);
  }

  const opened = plan.cards.find((card) => card.number === open);
  return (
    <>
      <div class="heading-line">
        <h1>{words.plan.heading(plan.cards.length)}</h1>
        <StepButtons pad={pad.id} plan={plan.id} show={showStep} />
      </div>
      <Verdict table={table} open={setOpen} />
      {problem && <Mishap problem={problem} />}
      <ul class={busy ? 'planned busy' : 'planned'} aria-busy={busy}>
        {plan.cards.map((card) => (
          <li key={card.number}>
            <PlannedPicture
              card={card}
              table={table}
              pinned={(wishes.pins ?? []).some((pin) => pin.card === card.number)}
              open={() => setOpen(card.number)}
            />
          </li>
        ))}
      </ul>
      <TasteSliders taste={wishes.taste} wish={(taste) => void wish({ taste })} />
      <WhatElse
        table={table}
        wishes={wishes}
        busy={busy}
        wish={(change) => void wish(change)}
        take={(slots) => void anew(() => takePlan(pad.id, slots, plan.id))}
      />
      <div class="onward">
        <Link to={{ at: 'cards', pad: pad.id, plan: null }} class="button quiet">
          {words.plan.otherCards}
        </Link>
        <Link to={{ at: 'guide', pad: pad.id, plan: plan.id }} class="button">
          {words.plan.toGuide} <Icon name="next" />
        </Link>
      </div>
      {opened && (
        <CardSheet
          card={opened}
          table={table}
          pins={wishes.pins ?? []}
          busy={busy}
          problem={problem}
          pin={(pins) => void wish({ pins })}
          show={setOpen}
          showStep={showStep}
        />
      )}
    </>
  );
}
