import { useEffect } from 'preact/hooks';
import type { VNode } from 'preact';
import { LatestPlan } from '../plan/latest-plan.tsx';
import { rememberPlan } from '../plan/made.ts';
import type { OnTable } from '../plan/table-of.ts';
import { WithPlan } from '../plan/with-plan.tsx';
import { ruler } from '../table/settings.ts';
import { Once } from '../table/waiting.tsx';
import { guideWords } from '../words/guide.ts';
import { words } from '../words/words.ts';
import { classSets, cuts, guides, leftovers } from '../wire/shelves.ts';
import { GuideSteps } from './guide-steps.tsx';
import { peopleFor, stacked } from './how-cut.ts';

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
  const guideAt = `${plan.id}/${ruler.value}`;
  const set = people === 1 ? null : classSets.at(`${plan.id}/${people}/${stack}`).value;
  const keptNow = leftovers.at(`${pad.id}/${plan.id}`).value.value;
  const kept = keptNow ?? NOTHING_KEPT;
  const spared = keptNow?.spared.join(' ') ?? null;
  useEffect(() => {
    if (spared === null) return;
    const before = sparedThen.get(cutsAt) ?? spared;
    sparedThen.set(cutsAt, spared);
    if (before !== spared) void cuts.fresh(cutsAt);
  }, [cutsAt, spared]);
  return (
    <Once of={cuts.at(cutsAt)} again={() => void cuts.fresh(cutsAt)} heading={guideWords.heading}>
      {(slots) => (
        <Once
          of={guides.at(guideAt)}
          again={() => void guides.fresh(guideAt)}
          heading={guideWords.heading}
        >
          {(guide) => (
            <GuideSteps
              key={plan.id}
              book={{
                table,
                cuts: slots,
                guide,
                kept,
                set: set?.value ?? null,
                stack,
                ruler: ruler.value,
              }}
              problem={set?.problem ?? null}
            />
          )}
        </Once>
      )}
    </Once>
  );
}
