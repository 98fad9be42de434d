import type * as Wire from '../../contract/plans.ts';
import type { PlanRow } from '../../store/rows.ts';

/** Plans in brief, each with the choice of cards that it belongs to and how much of its guide is done. Takes the oldest first. */
export function listOnWire(
  rows: readonly PlanRow[],
  ticks: ReadonlyMap<string, number>,
): Wire.PlanSummary[] {
  const choices = new Map<string, string>();
  return rows.map(({ anew, ...row }) => {
    // One whose plan before was deleted begins a choice of its own.
    const changed = anew || row.from === null ? undefined : choices.get(row.from);
    const choice = changed ?? row.id;
    choices.set(row.id, choice);
    return { ...row, choice, ticks: ticks.get(row.id) ?? 0 };
  });
}
