import type { VNode } from 'preact';
import type { OtherPlan } from '../../server/contract/plans.ts';
import { words } from '../words.ts';

/** The cards that another plan makes otherwise, as small pictures. */
export function OtherCards({ other }: { other: OtherPlan }): VNode {
  return (
    <ul class="other-cards">
      {other.pictures.map(({ card, picture }) => (
        <li key={card}>
          <img src={picture} alt={words.plan.card(card)} loading="lazy" width="108" height="140" />
          <span class="small" aria-hidden="true">
            {card}
          </span>
        </li>
      ))}
    </ul>
  );
}
