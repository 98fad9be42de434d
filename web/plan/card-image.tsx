import type { VNode } from 'preact';
import type { PlannedCard } from '../../server/contract/plans.ts';
import { millimetres } from '../lengths/lengths.ts';
import { words } from '../words.ts';
import { layoutOf } from './layout-of.ts';
import type { OnTable } from './table-of.ts';

interface Props {
  readonly card: PlannedCard;
  readonly table: OnTable;
  /** Whether its words stand elsewhere, so that it is only to be looked at. */
  readonly silent?: boolean;
}

/** The picture of a card at its true proportion; its place is kept before it is drawn. */
export function CardImage({ card, table, silent }: Props): VNode {
  const size = layoutOf(table, card)?.card;
  return (
    <img
      src={drawnAt(card)}
      alt={silent ? '' : words.plan.card(card.number)}
      width={Math.round((millimetres(size?.width ?? '') ?? 108) * 10)}
      height={Math.round((millimetres(size?.height ?? '') ?? 140) * 10)}
    />
  );
}

/** The drawing that the browser itself paints: sent at once, and sharp at every size. */
export function drawnAt({ picture }: PlannedCard): string {
  return picture.replace(/\.png$/, '.svg');
}
