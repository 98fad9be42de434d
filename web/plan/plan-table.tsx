import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Plan } from '../../server/contract/plans.ts';
import type { Problem } from '../../server/contract/values.ts';
import { announce } from '../table/announce.tsx';
import { ChooseAgain } from '../supplies/choose-again.tsx';
import { pinsLeft } from '../supplies/newer-supplies.ts';
import { Icon } from '../table/icon.tsx';
import { Link } from '../table/link.tsx';
import { Mishap } from '../table/mishap.tsx';
import { settle } from '../table/way.ts';
import { planWords } from '../words/plan.ts';
import { asProblem } from '../wire/ask.ts';
import { plans } from '../wire/shelves.ts';
import { asFew } from './as-few.ts';
import { CardSheet } from './card-sheet.tsx';
import { changedCards, pinnedAnew } from './changed-cards.ts';
import { ChangedToo } from './changed-too.tsx';
import { replan, takePlan } from './make-plan.ts';
import { PlannedPicture } from './planned-picture.tsx';
import type { Step, Wishes } from './steps.ts';
import type { OnTable } from './table-of.ts';
import { usePapersAhead } from './papers-ahead.ts';
import { PulledPaper } from './pulled-paper.tsx';
import { spotAt } from './spot-at.ts';
import { swapped } from './swap-papers.ts';
import { useLate } from './use-late.ts';
import { usePull } from './use-pull.ts';
import { TasteSliders } from './taste-sliders.tsx';
import { StepButtons } from './step-buttons.tsx';
import { useStepKeys } from './step-keys.ts';
import { wishesOf } from './wishes.ts';
import { Verdict, VerdictMore } from './verdict.tsx';
import { WhatElse } from './what-else.tsx';

/** What a wish has changed: the plan it made and the one it came from, all cards that changed, and those she did not touch. */
interface Changed {
  readonly plan: string;
  readonly from: string;
  readonly cards: readonly number[];
  readonly too: readonly number[];
}

/** The cards of a plan on the table, with what can be wished for differently. */
export function PlanTable(table: OnTable): VNode {
  const { plan, pad } = table;
  const [open, setOpen] = useState<number | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [busy, setBusy] = useState(false);
  const late = useLate(busy);
  // What she wished last is shown at once, before the service has planned it.
  const [wished, setWished] = useState<Wishes | null>(null);
  const wishes = wished ?? wishesOf(plan);
  const [changed, setChanged] = useState<Changed | null>(null);
  const now = changed?.plan === plan.id ? changed : null;

  function showStep(step: Step): void {
    setProblem(null);
    settle({ at: 'plan', pad: pad.id, plan: step.plan });
  }
  useStepKeys(pad.id, plan.id, showStep);
  usePapersAhead(pad);

  async function wish(change: Partial<Wishes>): Promise<void> {
    const next = { ...wishes, ...change };
    setWished(next);
    await anew(() => replan(pad.id, next, plan.id), pinnedAnew(wishes.pins, next.pins));
    // A later wish that is still on its way stays shown.
    setWished((now) => (now === next ? null : now));
  }

  /** `hers` are the cards that she has changed herself: of the others it is said that they changed too. */
  async function anew(
    make: () => Promise<Plan>,
    hers: readonly number[] = [],
    from = plan,
  ): Promise<void> {
    setBusy(true);
    setProblem(null);
    try {
      const made = await make();
      const cards = changedCards(from, made);
      const too = hers.length === 0 ? [] : cards.filter((card) => !hers.includes(card));
      setChanged({ plan: made.id, from: from.id, cards, too });
      announce(too.length === 0 ? planWords.replanned : planWords.changed.too(too));
    } catch (fault) {
      setProblem(asProblem(fault));
    }
    setBusy(false);
  }

  const field = usePull({
    busy,
    spotAt: (x, y) => spotAt(x, y, table),
    drop: (from, to) => {
      const pins = swapped(wishes.pins ?? [], plan.cards, from, to);
      if (pins) void wish({ pins });
    },
  });

  function fewer(): (() => void) | null {
    const before = now === null ? null : plans.at(now.from).peek().value;
    const slots = before && asFew(before, plan, pad);
    if (!slots) return null;
    const hers = pinnedAnew(before.asked.pins, plan.asked.pins);
    return () => void anew(() => takePlan(pad.id, slots, plan.id), hers, before);
  }

  const opened = plan.cards.find((card) => card.number === open);
  return (
    <>
      <div class="heading-line">
        <h1>{planWords.heading(plan.cards.length)}</h1>
        <StepButtons pad={pad.id} plan={plan.id} show={showStep} />
      </div>
      <Verdict {...table} />
      {problem && !opened && <Mishap problem={problem} away={() => setProblem(null)} />}
      <ChooseAgain
        plan={plan}
        supplies={table.supplies}
        busy={busy}
        choose={() => void wish({ pins: pinsLeft(wishes.pins ?? [], table.supplies) })}
      />
      <ul class={late ? 'planned busy' : 'planned'} aria-busy={busy} ref={field}>
        {plan.cards.map((card) => (
          <li key={card.number}>
            <PlannedPicture
              card={card}
              table={table}
              pinned={(wishes.pins ?? []).some((pin) => pin.card === card.number)}
              changed={now?.cards.includes(card.number) ?? false}
              open={() => setOpen(card.number)}
            />
          </li>
        ))}
      </ul>
      {now && now.too.length > 0 && !opened && (
        <ChangedToo
          cards={now.too}
          back={() => showStep({ plan: now.from })}
          keep={() => setChanged({ ...now, too: [] })}
          fewer={busy ? null : fewer()}
        />
      )}
      <p class="small pull-hint">{planWords.pull.hint}</p>
      <VerdictMore table={table} open={setOpen} />
      <PulledPaper {...table} />
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
          {planWords.otherCards}
        </Link>
        <Link to={{ at: 'guide', pad: pad.id, plan: plan.id }} class="button">
          {planWords.toGuide} <Icon name="next" />
        </Link>
      </div>
      {opened && (
        <CardSheet
          card={opened}
          table={table}
          pins={wishes.pins ?? []}
          busy={busy}
          late={late}
          problem={problem}
          changedToo={now?.too ?? []}
          pin={(pins) => void wish({ pins })}
          show={setOpen}
          showStep={showStep}
        />
      )}
    </>
  );
}
