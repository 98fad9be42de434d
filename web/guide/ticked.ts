import { onComingBack } from '../table/coming-back.ts';
import { remembered } from '../table/memory.ts';
import { Refused } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { ticks } from '../wire/shelves.ts';

/** Ticks that the service does not know yet: plan id to step id to done. They outlive a lost connection. */
const unsent = remembered<Record<string, Readonly<Record<string, boolean>>>>(
  'ticks-unsent',
  {},
  isRecord,
);

export function isTicked(plan: string, step: string): boolean {
  return unsent.value[plan]?.[step] ?? (ticks.at(plan).value.value ?? []).includes(step);
}

/** Ticks at once, here; the service keeps it for every device. */
export function tick(plan: string, step: string, done: boolean): void {
  unsent.value = { ...unsent.peek(), [plan]: { ...unsent.peek()[plan], [step]: done } };
  void send(plan, step, done);
}

async function send(plan: string, step: string, done: boolean): Promise<void> {
  try {
    ticks.put(plan, await service.tick(plan, step, done));
  } catch (fault) {
    if (!isFinal(fault)) return;
  }
  // Ticked the other way meanwhile: that one is under way itself.
  if (unsent.peek()[plan]?.[step] !== done) return;
  const others = without(unsent.peek()[plan] ?? {}, step);
  const plans = without(unsent.peek(), plan);
  unsent.value = Object.keys(others).length === 0 ? plans : { ...plans, [plan]: others };
}

/** A plan that is gone does not come back; no answer, a busy service and a fault of it are asked again later. */
function isFinal(fault: unknown): boolean {
  if (!(fault instanceof Refused)) return true;
  const { status } = fault.problem;
  return status >= 400 && status < 500 && status !== 408 && status !== 429;
}

/** Sends what a lost connection held back. */
export function sendTicks(): void {
  for (const [plan, steps] of Object.entries(unsent.peek()))
    for (const [step, done] of Object.entries(steps)) void send(plan, step, done);
}

onComingBack(sendTicks);
// Those of an earlier visit: this file may come later than the connection did.
sendTicks();

function without<T>(record: Readonly<Record<string, T>>, key: string): Record<string, T> {
  return Object.fromEntries(Object.entries(record).filter(([name]) => name !== key));
}

function isRecord(value: unknown): value is Record<string, Readonly<Record<string, boolean>>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
