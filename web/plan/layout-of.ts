import type { LayoutListing } from '../../server/contract/layouts.ts';
import type { PlannedCard } from '../../server/contract/plans.ts';
import type { OnTable } from './table-of.ts';

export function layoutOf(table: OnTable, card: PlannedCard): LayoutListing | undefined {
  return table.layouts.find((layout) => layout.id === card.layout);
}
