import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { PlanSummary } from '../../server/contract/plans.ts';
import { ticksDone } from '../guide/ticked.ts';
import { Dialog } from '../table/dialog.tsx';
import { Icon } from '../table/icon.tsx';
import { earlierWords } from '../words/earlier.ts';
import { plansOf } from '../wire/shelves.ts';
import { cardPicture } from './card-pictures.ts';
import { DrawnCard } from './drawn-card.tsx';
import { plansBefore, spread } from './plans-before.ts';
import type { Step } from './steps.ts';

/** So many plans are shown at once, each by so many of its cards. */
const AT_ONCE = 8;
const PICTURES = 4;

interface Props {
  readonly pad: string;
  /** The plan on the table. */
  readonly plan: string;
  readonly show: (step: Step) => void;
}

/** The way to the plans that were made before, and back: no plan is lost by another. Nothing where there is one alone. */
export function EarlierPlans({ pad, plan, show }: Props): VNode | null {
  const [open, setOpen] = useState(false);
  const plans = plansBefore(plansOf.at(pad).value.value ?? [], plan);
  if (plans.length < 2) return null;
  function take(step: Step): void {
    setOpen(false);
    if (step.plan !== plan) show(step);
  }
  return (
    <>
      <button type="button" class="round wide" onClick={() => setOpen(true)}>
        <Icon name="cards" />
        <span>{earlierWords.open}</span>
      </button>
      {open && (
        <Dialog title={earlierWords.open} wide close={() => setOpen(false)}>
          <p>{earlierWords.lead}</p>
          <List plans={plans} now={plan} take={take} />
        </Dialog>
      )}
    </>
  );
}

interface ListProps {
  readonly plans: readonly PlanSummary[];
  readonly now: string;
  readonly take: (step: Step) => void;
}

function List({ plans, now, take }: ListProps): VNode {
  const [most, setMost] = useState(AT_ONCE);
  const left = plans.length - most;
  return (
    <>
      <ul class="earlier-plans">
        {plans.slice(0, most).map((one) => (
          <li key={one.id}>
            <EarlierPlan one={one} now={one.id === now} take={() => take({ plan: one.id })} />
          </li>
        ))}
      </ul>
      {left > 0 && (
        <button type="button" class="button quiet" onClick={() => setMost(most + AT_ONCE)}>
          {earlierWords.more(Math.min(left, AT_ONCE))}
        </button>
      )}
    </>
  );
}

function EarlierPlan({
  one,
  now,
  take,
}: {
  one: PlanSummary;
  now: boolean;
  take: () => void;
}): VNode {
  const done = now ? ticksDone(one.id) : one.ticks;
  return (
    <button
      type="button"
      class="earlier-plan"
      aria-current={now ? 'true' : undefined}
      onClick={take}
    >
      <span class="earlier-cards" aria-hidden="true">
        {spread(one.cards, PICTURES).map((number) => (
          <SmallCard key={number} drawing={`/api/plans/${one.id}/cards/card-${number}.svg`} />
        ))}
      </span>
      <span class="earlier-words">
        <strong>{earlierWords.cards(one.cards)}</strong>
        <span class="small">{earlierWords.made(one.createdAt)}</span>
        <span class={done > 0 ? 'tag kept' : 'small'}>
          {done > 0 && <Icon name="tick" />} {earlierWords.ticks(done)}
        </span>
        {now && <span class="tag">{earlierWords.now}</span>}
      </span>
    </button>
  );
}

function SmallCard({ drawing }: { drawing: string }): VNode {
  const picture = cardPicture(drawing, 'table').value;
  if (picture === null) return <span class="small-card-place" />;
  return <DrawnCard picture={picture} label="" />;
}
