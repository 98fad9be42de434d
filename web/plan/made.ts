import { remembered } from '../table/memory.ts';

/** The plan last made for each pad: pad id to plan id. */
const made = remembered<Record<string, string>>('plans', {}, isRecord);

export function planOf(pad: string): string | null {
  return made.value[pad] ?? null;
}

/** The plan that is on the table: the one that this device remembers, else the latest; null where there is none. */
export function planNow(pad: string, known: readonly { readonly id: string }[]): string | null {
  const mine = known.find(({ id }) => id === planOf(pad));
  return (mine ?? known.at(-1))?.id ?? null;
}

export function rememberPlan(pad: string, plan: string): void {
  if (made.peek()[pad] !== plan) made.value = { ...made.peek(), [pad]: plan };
}

function isRecord(value: unknown): value is Record<string, string> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
