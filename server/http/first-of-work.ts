import type { LeftoverRow } from '../store/rows.ts';
import type { Edges } from './edges.ts';
import { planAt } from './make-plan.ts';
import type { KeptPlan } from './make-plan.ts';
import { isSameWork } from './same-work.ts';

/**
 * The kept parts, with those that come of this very work named as the plan's own, whichever plan they were kept from: a
 * paper that is kept as it lies makes another plan, but nothing is cut a second time. The same cards chosen anew are
 * another batch, of other sheets.
 */
export async function withOwnParts(
  edges: Edges,
  plan: KeptPlan,
  rows: readonly LeftoverRow[],
): Promise<LeftoverRow[]> {
  return named(plan, await plansOfWork(edges, plan, rows), rows);
}

/** Which plans of those that parts were kept from are the same work as this one. */
export async function plansOfWork(
  edges: Edges,
  plan: KeptPlan,
  rows: readonly LeftoverRow[],
): Promise<ReadonlySet<string>> {
  const ids = new Set(rows.flatMap((row) => (row.plan === null ? [] : [row.plan])));
  const own = new Set([plan.id]);
  if ([...ids].every((id) => own.has(id))) return own;
  const first = await firstOfWork(edges, plan);
  for (const id of ids) {
    const other = await planOrNone(edges, id);
    if ((other === null ? id : await firstOfWork(edges, other)) === first) own.add(id);
  }
  return own;
}

export function named(
  plan: KeptPlan,
  own: ReadonlySet<string>,
  rows: readonly LeftoverRow[],
): LeftoverRow[] {
  return rows.map((row) =>
    row.plan !== null && own.has(row.plan) ? { ...row, plan: plan.id } : row,
  );
}

/** The plan from which the work of this one came, step by step without a change of it; it may have been deleted since. */
async function firstOfWork(edges: Edges, plan: KeptPlan): Promise<string> {
  let at = plan;
  for (;;) {
    const { from, anew = false } = at.asked;
    if (from === undefined || anew) return at.id;
    const before = await planOrNone(edges, from);
    if (before === null) return from;
    if (!isSameWork(before, at)) return at.id;
    at = before;
  }
}

async function planOrNone(edges: Edges, id: string): Promise<KeptPlan | null> {
  return (await edges.store.read.plans.padOf(id)) === null ? null : planAt(edges, id);
}
