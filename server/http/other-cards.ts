import type { OtherPlan } from '../plan/plan-desk.ts';
import type { Plan } from '../plan/plan.ts';
import type { Edges } from './edges.ts';
import { Lately } from '../recall/lately.ts';
import type { KeptPlan } from './make-plan.ts';
import { wishesKept } from './make-plan.ts';

/** Plans that were offered last, so that their cards are drawn without planning them again. */
const MOST_OFFERED = 24;

export interface OtherCards {
  /** The cards that look otherwise than in the plan, each with the address of its picture. */
  picturesOf(kept: KeptPlan, other: OtherPlan): { card: number; picture: string }[];
  /** The plan as it would be with these sheets, as its address names them. */
  withSheets(edges: Edges, kept: KeptPlan, sheets: string): Promise<KeptPlan>;
}

/** Pictures of plans that are offered and not kept: their address names the sheet of every slot. */
export function otherCards(): OtherCards {
  const offered = new Lately<string, Plan>(MOST_OFFERED);
  return {
    picturesOf: (kept, { plan }) => {
      const sheets = named(kept, plan.slots);
      offered.put(`${kept.id} ${sheets}`, plan);
      const before = new Map(kept.batch.plan.cards.map((card) => [card.number, made(card)]));
      return plan.cards
        .filter((card) => before.get(card.number) !== made(card))
        .map(({ number }) => ({
          card: number,
          picture: `/api/plans/${kept.id}/others/cards/card-${number}.svg?sheets=${sheets}`,
        }));
    },
    withSheets: async ({ desk }, kept, sheets) => {
      const key = `${kept.id} ${sheets}`;
      const plan =
        offered.at(key) ??
        (await desk.withSheets({ batch: kept.batch, ask: wishesKept(kept) }, read(kept, sheets)))
          .plan;
      offered.put(key, plan);
      return { ...kept, batch: { ...kept.batch, plan } };
    },
  };
}

function made({ layers }: Plan['cards'][number]): string {
  return JSON.stringify(layers);
}

function named({ batch }: KeptPlan, slots: Plan['slots']): string {
  return batch.scheme.slots.map(({ id }) => slots[id]).join('.');
}

function read({ batch }: KeptPlan, sheets: string): Record<string, string> {
  const ids = sheets.split('.');
  return Object.fromEntries(batch.scheme.slots.map(({ id }, at) => [id, ids[at] ?? '']));
}
