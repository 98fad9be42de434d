import type { VNode } from 'preact';
import type { OtherPlan } from '../../server/contract/plans-again.ts';
import { planWords } from '../words/plan.ts';
import { cardPicture } from './card-pictures.ts';
import { DrawnCard } from './drawn-card.tsx';
import { ratioOf } from './ratio-of.ts';
import type { OnTable } from './table-of.ts';

/** The cards that another plan makes otherwise, as small pictures. */
export function OtherCards({ other, table }: { other: OtherPlan; table: OnTable }): VNode {
  return (
    <ul class="other-cards">
      {other.pictures.map(({ card, picture }) => (
        <li key={card}>
          <SmallCard number={card} drawing={picture} table={table} />
          <span class="small" aria-hidden="true">
            {card}
          </span>
        </li>
      ))}
    </ul>
  );
}

interface Props {
  readonly number: number;
  readonly drawing: string;
  readonly table: OnTable;
}

function SmallCard({ number, drawing, table }: Props): VNode {
  const picture = cardPicture(drawing, 'table').value;
  if (picture !== null) return <DrawnCard picture={picture} label={planWords.card(number)} />;
  const card = table.plan.cards.find((one) => one.number === number);
  const aspectRatio = card === undefined ? undefined : String(ratioOf(table, card));
  return <span class="small-card-place drawing" style={{ aspectRatio }} />;
}
