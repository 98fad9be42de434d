import { batch } from '@preact/signals';

/** What is ready waits no longer than this for what belongs to it, in milliseconds. */
export const WAIT_MS = 250;

interface Group {
  /** How many are still on their way. */
  coming: number;
  /** What is here and not shown yet. */
  readonly ready: (() => void)[];
  timer: ReturnType<typeof setTimeout> | null;
}

const groups = new Map<string, Group>();

/**
 * Shows pictures that belong together in one go, so that they do not come in one after the other: all with the last
 * of them, or what is here once the first of it has waited for WAIT_MS. The last one never waits.
 *
 * Takes       what they belong to, and a picture on its way, as the step that shows it; it must not fail.
 */
export function showTogether(belongsTo: string, coming: Promise<() => void>): void {
  const group = groups.get(belongsTo) ?? { coming: 0, ready: [], timer: null };
  groups.set(belongsTo, group);
  group.coming += 1;
  void coming.then((show) => {
    group.coming -= 1;
    group.ready.push(show);
    if (group.coming === 0) groups.delete(belongsTo);
    if (group.coming === 0) showAll(group);
    else group.timer ??= setTimeout(() => showAll(group), WAIT_MS);
  });
}

function showAll(group: Group): void {
  if (group.timer !== null) clearTimeout(group.timer);
  group.timer = null;
  const ready = group.ready.splice(0);
  batch(() => ready.forEach((show) => show()));
}
