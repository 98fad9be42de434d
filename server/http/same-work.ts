import type { KeptPlan } from './make-plan.ts';

/**
 * Whether two plans are cut and built by the same guide: the same cuts of the same sheets, laid the same way up,
 * for the same pieces of the same cards. What is done by one is then done by the other.
 */
export function isSameWork(a: KeptPlan, b: KeptPlan): boolean {
  return workOf(a) === workOf(b);
}

function workOf({ batch: { cards, scheme, plan } }: KeptPlan): string {
  const made = plan.cards.map(({ number, layers }) => [number, layers]);
  return JSON.stringify([cards, scheme, plan.slots, plan.up, made]);
}
