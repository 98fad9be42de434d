import type { VNode } from 'preact';
import type { PlannedCard } from '../../server/contract/plans.ts';
import { planWords } from '../words/plan.ts';

type Reason = PlannedCard['reasons'][number];

/** Below this a border between two layers is worth a look. */
const WEAK = 0.6;
const SHOWN = 3;

/** Why a card goes together: its worst point first, whatever it is, then its best, the rest on request. */
export function Reasons({ reasons }: { reasons: readonly Reason[] }): VNode | null {
  const sorted = [...reasons].sort((a, b) => a.score - b.score);
  const weak = sorted.filter(({ score }, at) => score < WEAK || at === 0);
  const strong = sorted.slice(weak.length).reverse();
  const rest = strong.slice(SHOWN);
  if (sorted.length === 0) return null;
  return (
    <>
      <h3>{weak[0]!.score < WEAK ? planWords.weakSpots : planWords.least}</h3>
      <List reasons={weak} />
      {strong.length > 0 && (
        <>
          <h3>{planWords.why}</h3>
          <List reasons={strong.slice(0, SHOWN)} />
        </>
      )}
      {rest.length > 0 && (
        <details class="more-reasons">
          <summary>{planWords.moreReasons(rest.length)}</summary>
          <List reasons={rest} />
        </details>
      )}
      <p class="small">{planWords.shares}</p>
    </>
  );
}

function List({ reasons }: { reasons: readonly Reason[] }): VNode {
  return (
    <ul class="reasons">
      {reasons.map((reason) => (
        <li key={reason.text + reason.layers.join()}>
          <span class="score-words">{planWords.together(reason.score)}</span> {reason.text}
        </li>
      ))}
    </ul>
  );
}
