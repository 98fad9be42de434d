import type { VNode } from 'preact';
import type { OtherPlan } from '../../server/contract/plans-again.ts';
import { planWords } from '../words/plan.ts';
import { cardPicture } from './card-pictures.ts';
import { DrawnCard } from './drawn-card.tsx';

/** The cards that another plan makes otherwise, as small pictures. */
export function OtherCards({ other }: { other: OtherPlan }): VNode {
  return (
    <ul class="other-cards">
      {other.pictures.map(({ card, picture }) => (
        <li key={card}>
          <SmallCard card={card} drawing={picture} />
          <span class="small" aria-hidden="true">
            {card}
          </span>
        </li>
      ))}
    </ul>
  );
}

function SmallCard({ card, drawing }: { card: number; drawing: string }): VNode {
  const picture = cardPicture(drawing, 'table').value;
  if (picture === null) return <span class="small-card-place drawing" />;
  return <DrawnCard picture={picture} label={planWords.card(card)} />;
}
