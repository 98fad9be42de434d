import { useRef, useState } from 'preact/hooks';
import type { Pin, Plan } from '../../server/contract/plans.ts';
import type { Problem } from '../../server/contract/values.ts';
import type { Instead } from '../table/mishap.tsx';
import { announce } from '../table/announce.tsx';
import { settle } from '../table/way.ts';
import { planWords } from '../words/plan.ts';
import { asProblem } from '../wire/ask.ts';
import { changedBySheets, changedCards, pinnedAnew } from './changed-cards.ts';
import { arrive, replan, takePlan } from './make-plan.ts';
import { slotsOf } from './slots-of.ts';
import type { Step } from './steps.ts';
import type { OnTable } from './table-of.ts';
import { WishLine, type Wished } from './wish-line.ts';
import { asChange, pinsInWay, samePin, wishesOf, withPin, type Wishes } from './wishes.ts';

/** What a wish has changed: the plan it made and the one it came from, all cards that changed, and those she did not touch. */
export interface Changed {
  readonly plan: string;
  readonly from: string;
  readonly cards: readonly number[];
  readonly too: readonly number[];
  /** Whether those had to change, as they are cut from the sheets that she exchanged. */
  readonly bySheets: boolean;
  /** Whether she has put away what is said of it. */
  readonly seen: boolean;
}

/** A wish, what it does to her wishes before it is planned, and which cards are hers: of others it is said that they changed too. */
interface Hers extends Wished {
  readonly change: (wishes: Wishes) => Wishes;
  readonly cards: (from: Plan) => readonly number[];
}

export interface OnWishes {
  /** Shown at once, before the service has planned them. */
  readonly wishes: Wishes;
  readonly busy: boolean;
  readonly problem: Problem | null;
  readonly changed: Changed | null;
  readonly wish: (change: Partial<Wishes>) => void;
  /** Has a plan with other sheets in its slots. */
  readonly take: (slots: Readonly<Record<string, string>>) => void;
  /** Has cardstock and inks chosen anew; every paper stays where it lies. */
  readonly chooseAgain: (word?: string, arrived?: (made: Plan) => void) => void;
  readonly showStep: (step: Step) => void;
  /** Takes a wish back that is not planned yet; false where none is. */
  readonly takeBack: () => boolean;
  /** Puts away what is said of cards that changed too. */
  readonly keepChanged: () => void;
  readonly forgetProblem: () => void;
  /** Does what was refused, and takes back the pins that it clashed with; null where none is known. */
  readonly insist: Instead | null;
}

/** All that she wishes of a plan, one after the other. */
export function useWishes({ plan, pad }: OnTable): OnWishes {
  const [problem, setProblem] = useState<Problem | null>(null);
  const [waiting, setWaiting] = useState<readonly Hers[]>([]);
  const [changed, setChanged] = useState<Changed | null>(null);
  const [last, setLast] = useState<readonly Pin[]>([]);
  const shown = useRef(plan);
  shown.current = plan;
  const line = useRef<WishLine<Hers> | null>(null);
  line.current ??= new WishLine<Hers>({
    shown: () => shown.current,
    waiting: setWaiting,
    refused: (fault) => setProblem(asProblem(fault)),
    arrived: (made, from, { cards: hersIn }) => {
      if (!arrive(made, from)) return;
      const hers = hersIn(from);
      const cards = changedCards(from, made);
      const too = hers.length === 0 ? [] : cards.filter((card) => !hers.includes(card));
      const bySheets = changedBySheets(from, made, too);
      setChanged({ plan: made.id, from: from.id, cards, too, bySheets, seen: false });
      const left = made.otherwise?.cards ?? [];
      const told = too.length > 0 || left.length > 0;
      announce(told ? planWords.changed.said({ cards, too, bySheets }, left) : planWords.replanned);
    },
  });
  const wishes = waiting.reduce((so, { change }) => change(so), wishesOf(plan));

  function wish(wanted: Partial<Wishes>): void {
    setProblem(null);
    const before = wishes.pins ?? [];
    setLast((wanted.pins ?? []).filter((pin) => !before.some((one) => samePin(one, pin))));
    const change = asChange(wishes, wanted);
    line.current?.wish({
      change,
      make: (from) => replan(pad.id, change(wishesOf(from)), from.id),
      cards: (from) => pinnedAnew(from.asked.pins, change(wishesOf(from)).pins),
    });
  }

  function take(slots: Readonly<Record<string, string>>): void {
    setProblem(null);
    line.current?.wish({
      change: (so) => so,
      // Offered for this plan, whatever lies on the table by then.
      make: () => takePlan(pad.id, slots, plan.id),
      cards: () => [],
    });
  }

  function chooseAgain(word?: string, arrived?: (made: Plan) => void): void {
    setProblem(null);
    line.current?.wish({
      change: (so) => so,
      make: async (from) => {
        const made = await takePlan(pad.id, slotsOf(from), from.id, 'now', word);
        arrived?.(made);
        return made;
      },
      cards: () => [],
    });
  }

  function showStep(step: Step): void {
    setProblem(null);
    line.current?.clear();
    settle({ at: 'plan', pad: pad.id, plan: step.plan });
  }

  const inWay = pinsInWay(problem, wishes.pins ?? [], last);
  return {
    wishes,
    insist:
      inWay.length === 0 || waiting.length > 0
        ? null
        : {
            say: planWords.insist([...new Set(inWay.map(({ card }) => card))]),
            act: () => {
              const left = (wishes.pins ?? []).filter((pin) => !inWay.includes(pin));
              wish({ pins: last.reduce(withPin, left) });
            },
          },
    busy: waiting.length > 0,
    problem,
    changed: changed?.plan === plan.id ? changed : null,
    wish,
    take,
    chooseAgain,
    showStep,
    takeBack: () => line.current?.takeBack() ?? false,
    keepChanged: () => setChanged((now) => now && { ...now, too: [], seen: true }),
    forgetProblem: () => setProblem(null),
  };
}
