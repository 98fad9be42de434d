import type { NewPlan } from '../../server/contract/plans.ts';
import { remembered } from '../table/memory.ts';

/** What she asked of a plan. */
export type Wishes = Omit<NewPlan, 'pad'>;

/** One plan and the wishes that led to it. */
export interface Step {
  readonly plan: string;
  readonly wishes: Wishes;
}

/** The plans of a pad in the order she made them; kept so that undo outlives a reload. */
const steps = remembered<Record<string, readonly Step[]>>('steps', {}, isRecord);

export function stepsOf(pad: string): readonly Step[] {
  return steps.value[pad] ?? [];
}

/** The steps on either side of a plan. */
export function neighbours(pad: string, plan: string): { before?: Step; after?: Step } {
  const all = stepsOf(pad);
  const at = all.findIndex((step) => step.plan === plan);
  const [before, after] = at < 0 ? [] : [all[at - 1], all[at + 1]];
  return { ...(before && { before }), ...(after && { after }) };
}

/** Puts a new step after the plan it came from; what she had undone falls away. */
export function noteStep(pad: string, step: Step, from: string | null): void {
  const before = steps.peek()[pad] ?? [];
  const at = from === null ? -1 : before.findIndex(({ plan }) => plan === from);
  steps.value = { ...steps.peek(), [pad]: [...before.slice(0, at + 1), step] };
}

function isRecord(value: unknown): value is Record<string, readonly Step[]> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
