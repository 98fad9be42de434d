import type { PlanSummary } from '../../server/contract/plans.ts';

/**
 * The plans worth going back to, the newest first: of every choice of cards the plan that she left for the next
 * choice, else the last one; every plan that she has begun to cut; and the one on the table. What lies between them
 * is found by undo.
 *
 * Takes       the plans of a pad, the oldest first, and the one on the table.
 */
export function plansBefore(all: readonly PlanSummary[], now: string): PlanSummary[] {
  const choiceOf = new Map(all.map(({ id, choice }) => [id, choice]));
  const stands = new Map(all.map(({ id, choice }) => [choice, id]));
  for (const { id, from, choice } of all) {
    const left = from === null ? undefined : choiceOf.get(from);
    if (choice === id && left !== undefined) stands.set(left, from!);
  }
  // On the table lies what stands for its choice now.
  const here = choiceOf.get(now);
  if (here !== undefined) stands.set(here, now);
  const shown = new Set(stands.values());
  const cut = all.filter(({ ticks }) => ticks > 0);
  // One whose ticks all went on with a change of it is found in that one.
  const wentOn = new Set(
    cut.flatMap(({ from, choice, ticks }) => {
      const before = cut.find(({ id }) => id === from);
      return before?.choice === choice && before.ticks <= ticks ? [before.id] : [];
    }),
  );
  for (const { id } of cut) if (!wentOn.has(id)) shown.add(id);
  return all.filter(({ id }) => shown.has(id)).reverse();
}

/** Up to so many of the numbers from 1 to `of`, evenly spread, so that unlike cards are seen. */
export function spread(of: number, most: number): number[] {
  const count = Math.min(of, most);
  return Array.from({ length: count }, (_, at) => 1 + Math.floor((at * of) / count));
}
