import type { PlannedCard } from '../../server/contract/plans.ts';
import { millimetres } from '../lengths/lengths.ts';
import { layoutOf } from './layout-of.ts';
import { ROOM } from './paper-under.ts';
import type { OnTable } from './table-of.ts';

/** Width over height of the picture of a card, with the room for its shadow, so that its place is kept before it is drawn. */
export function ratioOf(table: OnTable, card: PlannedCard): number {
  const size = layoutOf(table, card)?.card;
  const [width, height] = [
    millimetres(size?.width ?? '') ?? 108,
    millimetres(size?.height ?? '') ?? 140,
  ];
  return (width + 2 * ROOM) / (height + 2 * ROOM);
}
