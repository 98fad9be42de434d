import type { VNode } from 'preact';
import type { PlannedCard } from '../../server/contract/plans.ts';
import { words } from '../words.ts';

type Reason = PlannedCard['reasons'][number];

/** Below this a border between two layers is worth a look. */
const WEAK = 0.6;
const SHOWN = 3;

/** Why a card goes together: first what is weak in it, then its strongest points, the rest on request. */
export function Reasons({ reasons }: { reasons: readonly Reason[] }): VNode {
  const weak = reasons.filter(({ score }) => score < WEAK);
  const strong = reasons.filter(({ score }) => score >= WEAK).sort((a, b) => b.score - a.score);
  const rest = strong.slice(SHOWN);
  return (
    <>
      {weak.length > 0 && (
        <>
          <h3>{words.plan.weakSpots}</h3>
          <List reasons={weak} />
        </>
      )}
      <h3>{words.plan.why}</h3>
      <List reasons={strong.slice(0, SHOWN)} />
      {rest.length > 0 && (
        <details class="more-reasons">
          <summary>{words.plan.moreReasons(rest.length)}</summary>
          <List reasons={rest} />
        </details>
      )}
    </>
  );
}

function List({ reasons }: { reasons: readonly Reason[] }): VNode {
  return (
    <ul class="reasons">
      {reasons.map((reason) => (
        <li key={reason.text + reason.layers.join()}>
          {reason.text} <span class="reason-score">{words.goes(reason.score)}</span>
        </li>
      ))}
    </ul>
  );
}
