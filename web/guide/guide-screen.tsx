import { useEffect } from 'preact/hooks';
import type { VNode } from 'preact';
import type { ClassSet } from '../../server/contract/class-sets.ts';
import type { LeftoverList } from '../../server/contract/leftovers.ts';
import type { PlanCuts, PlanGuide } from '../../server/contract/plan-guides.ts';
import { LatestPlan } from '../plan/latest-plan.tsx';
import { rememberPlan } from '../plan/made.ts';
import type { OnTable } from '../plan/table-of.ts';
import { WithPlan } from '../plan/with-plan.tsx';
import { useHeld } from '../table/held.ts';
import { ruler, stockPaper } from '../table/settings.ts';
import type { PrintPaper } from '../table/settings.ts';
import { Coming, Once } from '../table/waiting.tsx';
import { guideWords } from '../words/guide.ts';
import { words } from '../words/words.ts';
import type { Kept } from '../wire/kept.ts';
import { classSets, cuts, guides, leftovers } from '../wire/shelves.ts';
import { GuideSteps } from './guide-steps.tsx';
import { peopleFor, stacked } from './how-cut.ts';
import type { GuideBook } from './steps-of.ts';

/** The guide propped up at the table: one step at a time, in large type. */
export function GuideScreen({ pad, plan }: { pad: string; plan: string | null }): VNode {
  useEffect(() => {
    if (plan !== null) rememberPlan(pad, plan);
  }, [pad, plan]);
  if (plan === null) return <LatestPlan pad={pad} at="guide" />;
  return (
    <WithPlan
      pad={pad}
      plan={plan}
      heading={words.stations.guide}
      show={(whole) => <WithCuts {...whole} />}
    />
  );
}

/** Sheets that kept parts spared when the cuts were asked for: such a sheet is not cut alike with others. */
const sparedThen = new Map<string, string>();
const NOTHING_KEPT = { leftovers: [], pieces: [], spared: [] };

function WithCuts(table: OnTable): VNode {
  const { plan, pad } = table;
  const stack = stacked.value;
  const people = peopleFor(plan.id);
  const cutsAt = `${plan.id}/${ruler.value}/${people}/${stack}`;
  const stock = stockPaper.value;
  const guideAt = `${plan.id}/${ruler.value}/${stock}`;
  const set = people === 1 ? null : classSets.at(`${plan.id}/${people}/${stack}/${stock}`).value;
  const slots = cuts.at(cutsAt);
  const guide = guides.at(guideAt);
  const keptNow = leftovers.at(`${pad.id}/${plan.id}`).value.value;
  const kept = keptNow ?? NOTHING_KEPT;
  const spared = keptNow?.spared.join(' ') ?? null;
  useEffect(() => {
    if (spared === null) return;
    const before = sparedThen.get(cutsAt) ?? spared;
    sparedThen.set(cutsAt, spared);
    if (before !== spared) void cuts.fresh(cutsAt);
  }, [cutsAt, spared]);
  const made = bookOf(table, slots.value.value, guide.value.value, set, kept, stack, stock);
  const book = useHeld(plan.id, made);
  const heading = guideWords.heading;
  if (book === null) {
    return (
      <Once of={slots} again={() => void cuts.fresh(cutsAt)} heading={heading}>
        {() => (
          <Once of={guide} again={() => void guides.fresh(guideAt)} heading={heading}>
            {() => <Coming heading={heading} />}
          </Once>
        )}
      </Once>
    );
  }
  const problem = set?.problem ?? slots.value.problem ?? guide.value.problem;
  return <GuideSteps key={plan.id} book={book} problem={problem} coming={made === null} />;
}

/** The guide once all its parts are here, or the batch for several people is refused; null before. */
function bookOf(
  table: OnTable,
  slots: PlanCuts | null,
  guide: PlanGuide | null,
  set: Kept<ClassSet> | null,
  kept: LeftoverList,
  stack: number,
  stock: PrintPaper,
): GuideBook | null {
  const answered = set?.value !== null || set.problem !== null;
  if (slots === null || guide === null || !answered) return null;
  return {
    table,
    cuts: slots,
    guide,
    kept,
    set: set?.value ?? null,
    stack,
    ruler: ruler.value,
    stock,
  };
}
