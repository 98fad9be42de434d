import { useRef } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pin, PlannedCard } from '../../server/contract/plans.ts';
import { planWords } from '../words/plan.ts';
import { cardPicture, drawnAt, type CardPicture, type Nearness } from './card-pictures.ts';
import { DrawnCard } from './drawn-card.tsx';
import { layoutOf } from './layout-of.ts';
import { PullMarks } from './pulled-paper.tsx';
import { ratioOf } from './ratio-of.ts';
import type { OnTable } from './table-of.ts';

interface Props {
  readonly card: PlannedCard;
  readonly table: OnTable;
  /** What she keeps, which may rule out a pull. */
  readonly pins: readonly Pin[];
  readonly nearness: Nearness;
  /** Whether its words stand elsewhere, so that it is only to be looked at. */
  readonly silent?: boolean;
}

/** The picture of a card at its true proportion. Its place is kept before it is drawn, and the picture before stays until the next one is here. */
export function CardImage({ card, table, pins, nearness, silent }: Props): VNode {
  const ratio = ratioOf(table, card);
  const picture = cardPicture(drawnAt(card), nearness).value;
  const before = useRef<CardPicture | null>(null);
  if (picture !== null) before.current = picture;
  return (
    <span
      data-card={card.number}
      class={picture === null ? 'card-place drawing' : 'card-place'}
      style={{ '--ratio': ratio, aspectRatio: String(ratio) }}
    >
      {before.current !== null && (
        <DrawnCard picture={before.current} label={silent ? '' : planWords.card(card.number)} />
      )}
      {nearness === 'table' && (
        <PullMarks card={card.number} layout={layoutOf(table, card)} table={table} pins={pins} />
      )}
    </span>
  );
}
