import { remembered } from '../table/memory.ts';

/** The steps that are done, for each plan: plan id to step ids. */
const done = remembered<Record<string, readonly string[]>>('ticked', {}, isRecord);

export function isTicked(plan: string, step: string): boolean {
  return (done.value[plan] ?? []).includes(step);
}

export function tick(plan: string, step: string, ticked: boolean): void {
  const others = (done.peek()[plan] ?? []).filter((one) => one !== step);
  done.value = { ...done.peek(), [plan]: ticked ? [...others, step] : others };
}

function isRecord(value: unknown): value is Record<string, readonly string[]> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
