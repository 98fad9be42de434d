import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import { ChooseAgain } from '../supplies/choose-again.tsx';
import { ChosenAgain } from '../supplies/chosen-again.tsx';
import { Icon } from '../table/icon.tsx';
import { Link } from '../table/link.tsx';
import { Mishap } from '../table/mishap.tsx';
import { planWords } from '../words/plan.ts';
import { CardSheet } from './card-sheet.tsx';
import { ChangedToo } from './changed-too.tsx';
import { useChooseAtOnce } from './choose-at-once.ts';
import { EarlierPlans } from './earlier-plans.tsx';
import { useLeaveCut } from './leave-cut.tsx';
import { PlannedPicture } from './planned-picture.tsx';
import type { StepsAt } from './steps.ts';
import type { OnTable } from './table-of.ts';
import { usePapersAhead } from './papers-ahead.ts';
import { PapersChanged } from './papers-changed.tsx';
import { wishesLeft } from './papers-since.ts';
import { PulledPaper } from './pulled-paper.tsx';
import { spotAt } from './spot-at.ts';
import { swapped } from './swap-papers.ts';
import { useLate } from '../table/use-late.ts';
import { usePull } from './use-pull.ts';
import { TasteSliders } from './taste-sliders.tsx';
import { StepButtons } from './step-buttons.tsx';
import { useStepKeys } from './step-keys.ts';
import { useWishes } from './use-wishes.ts';
import { keepsAsItLies, type Wishes } from './wishes.ts';
import { Verdict, VerdictMore } from './verdict.tsx';
import { WhatElse } from './what-else.tsx';

/** The cards of a plan on the table, with what can be wished for differently. */
export function PlanTable(table: OnTable): VNode {
  const { plan, pad } = table;
  const [open, setOpen] = useState<number | null>(null);
  const hers = useWishes(table);
  const { wishes, busy, problem, showStep } = hers;
  const leave = useLeaveCut(plan.id);
  const came = useChooseAtOnce(table, busy, hers.chooseAgain);
  const wish = (wanted: Partial<Wishes>): void => {
    // To keep what lies there changes nothing that is cut.
    if (keepsAsItLies(plan, wishes, wanted)) hers.wish(wanted);
    else void leave.first(() => hers.wish(wanted));
  };
  const take = (slots: Readonly<Record<string, string>>): void =>
    void leave.first(() => hers.take(slots));
  const late = useLate(busy);
  const now = hers.changed;
  const steps: StepsAt = {
    pad: pad.id,
    plan: plan.id,
    wishing: busy,
    takeBack: hers.takeBack,
    show: showStep,
  };
  useStepKeys(steps);
  usePapersAhead(pad);

  const field = usePull({
    spotAt: (x, y) => spotAt(x, y, table),
    drop: (from, to) => {
      const pins = swapped(wishes.pins ?? [], plan.cards, from, to);
      if (pins) wish({ pins });
    },
  });

  const insist = hers.insist && { ...hers.insist, act: () => void leave.first(hers.insist!.act) };
  const opened = plan.cards.find((card) => card.number === open);
  const told = now && !now.seen && (now.too.length > 0 || plan.otherwise) && !opened ? now : null;
  const anew = plan.otherwise && !busy ? () => take(plan.otherwise!.slots) : null;
  return (
    <>
      <div class="heading-line">
        <h1>{planWords.heading(plan.cards.length)}</h1>
        <div class="steps-line">
          <StepButtons {...steps} />
          <EarlierPlans pad={pad.id} plan={plan.id} show={showStep} />
        </div>
      </div>
      <Verdict table={table} anew={told ? null : anew} />
      {problem && !opened && (
        <Mishap problem={problem} away={hers.forgetProblem} otherwise={insist} />
      )}
      <ChooseAgain
        plan={plan}
        supplies={table.supplies}
        busy={busy}
        choose={() => void leave.first(() => hers.chooseAgain())}
      />
      {came && <ChosenAgain added={came.added} back={() => showStep({ plan: came.plan })} />}
      <PapersChanged
        plan={plan}
        pad={pad}
        busy={busy}
        again={() => wish(wishesLeft(wishes, pad, table.supplies))}
      />
      <ul class={late ? 'planned busy' : 'planned'} aria-busy={busy} ref={field}>
        {plan.cards.map((card) => (
          <li key={card.number}>
            <PlannedPicture
              card={card}
              table={table}
              pins={wishes.pins ?? []}
              changed={now?.cards.includes(card.number) ?? false}
              open={() => setOpen(card.number)}
            />
          </li>
        ))}
      </ul>
      {told && (
        <ChangedToo
          changed={told}
          otherwise={plan.otherwise?.cards ?? []}
          back={() => showStep({ plan: told.from })}
          keep={hers.keepChanged}
          anew={anew}
        />
      )}
      <p class="small pull-hint">{planWords.pull.hint}</p>
      <VerdictMore table={table} open={setOpen} />
      <PulledPaper table={table} pins={wishes.pins ?? []} />
      <TasteSliders taste={wishes.taste} wish={(taste) => wish({ taste })} />
      <WhatElse table={table} wishes={wishes} busy={busy} wish={wish} take={take} open={setOpen} />
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
          insist={insist}
          changed={now}
          pin={(pins) => wish({ pins })}
          show={setOpen}
          steps={steps}
        />
      )}
      {leave.question}
    </>
  );
}
