import { remembered } from '../table/memory.ts';

/** How many cards of each layout she wants, for each pad: pad id to layout id to count. */
const wanted = remembered<Record<string, Record<string, number>>>('cards', {}, isRecord);

export const MOST_OF_ONE = 60;

export function countsOf(pad: string): Record<string, number> {
  return wanted.value[pad] ?? {};
}

export function setCount(pad: string, layout: string, count: number): void {
  const kept = Math.max(0, Math.min(MOST_OF_ONE, Math.round(count)));
  const counts = { ...wanted.peek()[pad], [layout]: kept };
  wanted.value = {
    ...wanted.peek(),
    [pad]: Object.fromEntries(Object.entries(counts).filter(([, number]) => number > 0)),
  };
}

/** A layout that was just kept is to be made, or she would not have drawn it. */
export function countNew(pad: string, layout: string): void {
  if ((countsOf(pad)[layout] ?? 0) === 0) setCount(pad, layout, 1);
}

function isRecord(value: unknown): value is Record<string, Record<string, number>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
