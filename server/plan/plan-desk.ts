import type { Slot } from '../cutting/piece.ts';
import { asItLies, inPlace } from './as-it-lies.ts';
import type { Before } from './as-it-lies.ts';
import type { PlanAsk } from './ask.ts';
import { tiedUp } from './faces-up.ts';
import { instanceOf } from './instance.ts';
import type { Instance } from './instance.ts';
import { nearestForm } from './nearest-form.ts';
import { solve } from './network/solve.ts';
import { settledForm, symmetriesOf } from './network/symmetry.ts';
import type { Pin, Plan } from './plan.ts';
import { laidOut, planOf } from './plan-cards.ts';
import type { LaidOut } from './plan-cards.ts';
import { chosenIn, planIn } from './plan-with.ts';
import type { Best } from './plan-with.ts';
import { stillBest } from './still-best.ts';

/** What she may change on a plan that lies on the table. */
export type Change = Partial<Pick<PlanAsk, 'pins' | 'without' | 'limit' | 'scheme'>>;

/** One slot cut from another sheet than before. */
export interface Swap {
  readonly slot: string;
  readonly from: string;
  readonly to: string;
  /** The cards that get pieces of it. */
  readonly cards: readonly number[];
}

/** A plan and what it changes against the one before, in swaps and in words. */
export interface OtherPlan {
  readonly plan: Plan;
  readonly swaps: readonly Swap[];
  readonly changes: readonly string[];
}

/** A plan on the table: changes are solved again on the tables that are already worked out. */
export interface PlanDesk {
  readonly plan: Plan;
  /** Solves again with other pins, sheets left out or other cuts into the same slots; throws a Refusal when they cannot all hold. */
  change(change: Change): PlanDesk;
  /** The plan as one before it lay, where that changes fewer cards and costs next to nothing. */
  asItLies(before: Before): Plan;
  /** The plan as one before it lay, but for cards of which pieces come from another sheet; null where that is dear. */
  inPlace(before: Before, cards: readonly number[]): Plan | null;
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

function deskOf(first: Instance, starts: readonly (readonly number[])[]): PlanDesk {
  return deskWith(laidOut(first, starts));
}

function deskWith(laid: LaidOut): PlanDesk {
  const { instance, solution } = laid;
  const { ask } = instance;
  const plan = planOf(instance, solution);
  return {
    plan,
    change(change) {
      const changed = { ...ask, ...change };
      const up = changed.up && tiedUp(changed, changed.up);
      const next = instanceOf(up === undefined ? changed : { ...changed, up }, instance);
      const same = stillBest(next, laid);
      if (same !== null) return deskWith({ instance: next, solution: same });
      return deskOf(next, started(next, solution.choice!));
    },
    asItLies: (before) => asItLies(instance, plan, before),
    inPlace: (before, cards) => inPlace(instance, plan, before, cards),
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
  const { ask, network } = instance;
  const now = chosenDesigns(instance, plan);
  const solution = solve(network, [now], ask.seed, ask.limit, count + 1);
  // Slots that are alike may be exchanged without making another plan, and so as to change the fewest.
  const symmetries = symmetriesOf(network);
  const same = String(settledForm(symmetries, now));
  return solution.best
    .filter(({ choice }) => String(settledForm(symmetries, choice)) !== same)
    .slice(0, count)
    .map(({ choice }) => {
      const other = planOf(instance, solution, nearestForm(symmetries, choice, now));
      return { plan: other, ...changesOf(instance, plan, other) };
    });
}

/** The best plan without one more sheet, and what that changes; a Refusal when there are too few left. */
export function planWithout(ask: PlanAsk, plan: Plan, sheet: string): OtherPlan {
  const wish = { ...ask, without: [...ask.without, sheet] };
  const instance = instanceOf(wish);
  const now = chosenDesigns(instance, plan);
  const other = planOf(
    instance,
    solve(instance.network, started(instance, now), ask.seed, ask.limit),
  );
  return { plan: other, ...changesOf(instance, plan, other) };
}

/**
 * The plan with these sheets in its slots, when her wishes allow it; its bound is that of the best plan. Where a slot
 * keeps its sheet of `lying`, each piece of it also shows the side that it shows there.
 */
export function planWith(
  ask: PlanAsk,
  best: Best,
  slots: Readonly<Record<string, string>>,
  lying: Plan | null = null,
): Plan {
  const held = lying === null ? [] : sidesIn(lying, slots);
  // No wishes of hers: the plan does not say that she chose them.
  const instance = { ...instanceOf({ ...ask, pins: [...ask.pins, ...held] }), ask };
  return planIn(instance, chosenIn(instance, slots), best);
}

function sidesIn(lying: Plan, slots: Readonly<Record<string, string>>): Pin[] {
  return lying.cards.flatMap(({ number, layers }) =>
    layers.flatMap(({ layer, choice }): Pin[] =>
      choice.kind === 'paper' && slots[choice.slot] === lying.slots[choice.slot]
        ? [{ card: number, layer, side: choice.side }]
        : [],
    ),
  );
}

/** The number of the design in each slot of a plan, -1 for a sheet that is not of the pad. */
export function chosenDesigns({ ask, designs }: Instance, plan: Plan): number[] {
  return ask.scheme.slots.map((slot) =>
    designs.findIndex(({ sheet }) => sheet.id === plan.slots[slot.id]),
  );
}

function changesOf(instance: Instance, from: Plan, to: Plan): Omit<OtherPlan, 'plan'> {
  const label = (id: string): string =>
    instance.designs.find(({ sheet }) => sheet.id === id)?.sheet.label ?? id;
  const swaps = instance.ask.scheme.slots.flatMap((slot): Swap[] => {
    const [old, fresh] = [from.slots[slot.id]!, to.slots[slot.id]!];
    if (old === fresh) return [];
    return [{ slot: slot.id, from: old, to: fresh, cards: cardsOf(slot) }];
  });
  const said = swaps.map(
    ({ from: old, to: fresh, cards }) =>
      `${label(fresh)} instead of ${label(old)} for ${cards.length === 1 ? 'card' : 'cards'} ${cards.join(', ')}`,
  );
  return { swaps, changes: [...said, `${compared(to.value - from.value)} in all`] };
}

/** The cards that get pieces of a slot, in order. */
export function cardsOf({ pieces }: Slot): number[] {
  return [...new Set(pieces.map(({ piece }) => piece.card))].sort((a, b) => a - b);
}

function compared(difference: number): string {
  const size = Math.abs(difference).toFixed(3);
  if (Number(size) === 0) return 'as good';
  return difference > 0 ? `${size} better` : `${size} less`;
}
