import type { Plan } from '../../server/contract/plans.ts';
import type { Supply } from '../../server/contract/supplies.ts';
import { besidePad } from './beside.ts';

/** How her shelf has changed since a plan was made from it. */
export interface Newer {
  /** Cardstock and inks that the plan did not know. */
  readonly added: readonly Supply[];
  /** Whether the plan cuts from something that she has no more. */
  readonly gone: boolean;
}

export function newerSupplies(plan: Plan, supplies: readonly Supply[]): Newer {
  const has = besidePad(supplies, plan.pad).filter(({ sheets }) => sheets !== 0);
  const used = new Set(
    plan.cards.flatMap(({ layers }) => layers.flatMap((layer) => layer.supply ?? [])),
  );
  return {
    added: has.filter(({ id }) => !plan.supplies.includes(id)),
    gone: [...used].some((id) => supplies.every((supply) => supply.id !== id)),
  };
}
