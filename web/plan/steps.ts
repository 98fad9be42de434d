import { plansOf } from '../wire/shelves.ts';

/** A plan that she can go back or on to. */
export interface Step {
  readonly plan: string;
}

/** Where she stands among the plans, and how she walks them. */
export interface StepsAt {
  readonly pad: string;
  readonly plan: string;
  /** Whether a wish is under way, which undo takes back before all else. */
  readonly wishing: boolean;
  readonly takeBack: () => boolean;
  readonly show: (step: Step) => void;
}

/** Takes the last wish back: one that is not planned yet, else the plan that it made. False where there is none. */
export function undo({ pad, plan, takeBack, show }: StepsAt): boolean {
  if (takeBack()) return true;
  const { before } = neighbours(pad, plan);
  if (before) show(before);
  return before !== undefined;
}

/** Goes on to the plan after this one; not while a wish makes another. */
export function redo({ pad, plan, wishing, show }: StepsAt): boolean {
  const { after } = neighbours(pad, plan);
  if (after && !wishing) show(after);
  return after !== undefined;
}

/**
 * The plans on either side of a plan: the one that it changed or followed, and the latest that changed or followed
 * it. The service keeps which plan came from which, so undo and redo have no end, reach across every new choice of
 * cards, and are the same on every device. One that came from none follows the plan that was made before it.
 */
export function neighbours(pad: string, plan: string): { before?: Step; after?: Step } {
  const all = plansOf.at(pad).value.value ?? [];
  const known = new Set(all.map(({ id }) => id));
  const beforeOf = (at: number): string | undefined => {
    const from = all[at]?.from ?? null;
    return from !== null && known.has(from) ? from : all[at - 1]?.id;
  };
  const before = beforeOf(all.findIndex(({ id }) => id === plan));
  const next = all.findLast((_, at) => beforeOf(at) === plan);
  return {
    ...(before !== undefined && { before: { plan: before } }),
    ...(next && { after: { plan: next.id } }),
  };
}
