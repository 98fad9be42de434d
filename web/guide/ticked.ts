import { onComingBack } from '../table/coming-back.ts';
import { remembered } from '../table/memory.ts';
import { isForGood } from '../wire/lost.ts';
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

/** How many ticks the guide of a plan has, as far as is known here. */
export function ticksDone(plan: string): number {
  const done = new Set(ticks.at(plan).value.value ?? []);
  for (const [step, isDone] of Object.entries(unsent.value[plan] ?? {}))
    if (isDone) done.add(step);
    else done.delete(step);
  return done.size;
}

/** Ticks at once, here; the service keeps it for every device. */
export function tick(plan: string, step: string, done: boolean): void {
  unsent.value = { ...unsent.peek(), [plan]: { ...unsent.peek()[plan], [step]: done } };
  void sendTicks();
}

let sending = false;
/** After so long what could not be sent is sent again, in milliseconds, if nothing brings it out sooner. */
const AGAIN_MS = 8000;
let again = 0;

/** Sends what is not sent yet: one after the other, so that of two opposite ticks the later one is the last to arrive. */
async function sendTicks(): Promise<void> {
  if (sending) return;
  sending = true;
  clearTimeout(again);
  const failed = new Set<string>();
  for (let next = firstUnsent(failed); next !== null; next = firstUnsent(failed)) {
    if (await isSent(next)) forget(next);
    else failed.add(keyOf(next));
  }
  if (failed.size > 0) again = window.setTimeout(() => void sendTicks(), AGAIN_MS);
  sending = false;
}

interface Unsent {
  readonly plan: string;
  readonly step: string;
  readonly done: boolean;
}

function keyOf({ plan, step }: Omit<Unsent, 'done'>): string {
  return `${plan}/${step}`;
}

function firstUnsent(except: ReadonlySet<string>): Unsent | null {
  for (const [plan, steps] of Object.entries(unsent.peek()))
    for (const [step, done] of Object.entries(steps))
      if (!except.has(keyOf({ plan, step }))) return { plan, step, done };
  return null;
}

/** Whether there is nothing left to send of it: the service has it, or has refused it for good. */
async function isSent({ plan, step, done }: Unsent): Promise<boolean> {
  try {
    ticks.put(plan, await service.tick(plan, step, done));
    return true;
  } catch (fault) {
    // A plan that is gone does not come back; the rest is asked again later.
    return isForGood(fault);
  }
}

function forget({ plan, step, done }: Unsent): void {
  // Ticked the other way meanwhile: that one is to be sent yet.
  if (unsent.peek()[plan]?.[step] !== done) return;
  const others = without(unsent.peek()[plan] ?? {}, step);
  const plans = without(unsent.peek(), plan);
  unsent.value = Object.keys(others).length === 0 ? plans : { ...plans, [plan]: others };
}

onComingBack(() => void sendTicks());
// Those of an earlier visit: this file may come later than the connection did.
void sendTicks();

function without<T>(record: Readonly<Record<string, T>>, key: string): Record<string, T> {
  return Object.fromEntries(Object.entries(record).filter(([name]) => name !== key));
}

function isRecord(value: unknown): value is Record<string, Readonly<Record<string, boolean>>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
