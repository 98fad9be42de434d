import type { PlanAsk } from './ask.ts';
import { instanceOf } from './instance.ts';
import type { Instance } from './instance.ts';
import { solve } from './network/solve.ts';
import type { Plan } from './plan.ts';
import { planOf } from './plan-cards.ts';

/** What she may change on a plan that lies on the table. */
export type Change = Partial<Pick<PlanAsk, 'pins' | 'without' | 'limit'>>;

/** A plan and what it changes against the one before, in words. */
export interface OtherPlan {
  readonly plan: Plan;
  readonly changes: readonly string[];
}

/** A plan on the table: changes are solved again on the tables that are already worked out. */
export interface PlanDesk {
  readonly plan: Plan;
  /** Solves again with other pins or sheets left out; throws a Refusal when they cannot all hold. */
  change(change: Change): PlanDesk;
  /** The next best plans on the same slots, each different in at least one slot, the best first. */
  next(count: number): OtherPlan[];
}

export function layOut(ask: PlanAsk): PlanDesk {
  return deskOf(instanceOf(ask), []);
}

/** The next `count` plans after `plan`, for an ask that is not on a desk. */
export function nextBest(ask: PlanAsk, plan: Plan, count: number): OtherPlan[] {
  return nextOf(instanceOf(ask), plan, count);
}

function deskOf(instance: Instance, starts: readonly (readonly number[])[]): PlanDesk {
  const { ask } = instance;
  const solution = solve(instance.network, starts, ask.seed, ask.limit);
  const plan = planOf(instance, solution);
  return {
    plan,
    change(change) {
      const next = instanceOf({ ...ask, ...change }, instance);
      return deskOf(next, started(next, solution.choice!));
    },
    next: (count) => nextOf(instance, plan, count),
  };
}

/** The choice as a start for other wishes: slots that may no longer hold their sheet take another. */
function started(instance: Instance, choice: readonly number[]): number[][] {
  const left = [...instance.network.copies];
  const start = choice.map(() => -1);
  choice.forEach((design, slot) => {
    if (!instance.network.allowed[slot]!.includes(design) || left[design] === 0) return;
    start[slot] = design;
    left[design]!--;
  });
  for (const [slot, design] of start.entries()) {
    if (design >= 0) continue;
    const free = instance.network.allowed[slot]!.find((other) => left[other]! > 0);
    if (free === undefined) return [];
    start[slot] = free;
    left[free]!--;
  }
  return [start];
}

function nextOf(instance: Instance, plan: Plan, count: number): OtherPlan[] {
  const { ask, designs, network } = instance;
  const now = ask.scheme.slots.map((slot) =>
    designs.findIndex(({ sheet }) => sheet.id === plan.slots[slot.id]),
  );
  const solution = solve(network, [now], ask.seed, ask.limit, count + 1);
  return solution.best
    .filter(({ choice }) => choice.some((design, slot) => design !== now[slot]))
    .slice(0, count)
    .map(({ choice }) => {
      const other = planOf(instance, solution, choice);
      return { plan: other, changes: changesOf(instance, plan, other) };
    });
}

function changesOf(instance: Instance, from: Plan, to: Plan): string[] {
  const label = (id: string): string =>
    instance.designs.find(({ sheet }) => sheet.id === id)?.sheet.label ?? id;
  const swaps = instance.ask.scheme.slots.flatMap((slot) => {
    const [old, fresh] = [from.slots[slot.id]!, to.slots[slot.id]!];
    if (old === fresh) return [];
    const cards = [...new Set(slot.pieces.map(({ piece }) => piece.card))].sort((a, b) => a - b);
    return [
      `${label(fresh)} instead of ${label(old)} for ${cards.length === 1 ? 'card' : 'cards'} ${cards.join(', ')}`,
    ];
  });
  return [...swaps, `${signed(to.value - from.value)} in all`];
}

function signed(difference: number): string {
  const size = Math.abs(difference).toFixed(3);
  return difference > 0 ? `${size} better` : `${size} less`;
}
