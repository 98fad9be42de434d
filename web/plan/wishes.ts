import type { Problem } from '../../server/contract/values.ts';
import type { NewPlan, Pin, Plan } from '../../server/contract/plans.ts';

/** What she asked of a plan. */
export type Wishes = Omit<NewPlan, 'pad'>;

/** The wishes behind a plan, as the service keeps them. */
export function wishesOf({ asked }: Plan): Wishes {
  return asked;
}

/**
 * What a change does, so that it can be done to other wishes as well: to those that are left when a wish before
 * it cannot be met. Of pins, those that she took out or put in; the rest as she wants it.
 */
export function asChange(seen: Wishes, wanted: Partial<Wishes>): (wishes: Wishes) => Wishes {
  const { pins, ...rest } = wanted;
  if (pins === undefined) return (wishes) => ({ ...wishes, ...rest });
  const before = seen.pins ?? [];
  const out = before.filter((pin) => !pins.some((one) => samePin(one, pin)));
  const put = pins.filter((pin) => !before.some((one) => samePin(one, pin)));
  return (wishes) => {
    const left = (wishes.pins ?? []).filter((pin) => !out.some((one) => samePin(one, pin)));
    return { ...wishes, ...rest, pins: put.reduce(withPin, left) };
  };
}

export function samePin(a: Pin, b: Pin): boolean {
  return (
    a.card === b.card &&
    a.layer === b.layer &&
    a.side === b.side &&
    a.sheet === b.sheet &&
    a.supply === b.supply
  );
}

/** The pins with one more; a layer holds one pin, so an older one of that layer goes. */
export function withPin(pins: readonly Pin[], pin: Pin): Pin[] {
  return [...withoutPin(pins, pin.card, pin.layer), pin];
}

export function withoutPin(pins: readonly Pin[], card: number, layer: string): Pin[] {
  return pins.filter((pin) => pin.card !== card || pin.layer !== layer);
}

export function pinOf(pins: readonly Pin[], card: number, layer: string): Pin | undefined {
  return pins.find((pin) => pin.card === card && pin.layer === layer);
}

/** The older pins that a refusal names beside those that were wished last. */
export function pinsInWay(
  problem: Problem | null,
  pins: readonly Pin[],
  last: readonly Pin[],
): Pin[] {
  if (problem?.status !== 409 || problem.field !== 'pins' || !Array.isArray(problem.received))
    return [];
  const named = problem.received as readonly Pin[];
  const isNamed = (pin: Pin): boolean => named.some((one) => samePin(one, pin));
  if (!last.some(isNamed)) return [];
  return pins.filter((pin) => isNamed(pin) && !last.some((one) => samePin(one, pin)));
}

/**
 * Whether a wish only keeps papers and cardstock that lie there already, so that the plan stays as it is. A plan of any
 * cuts is cut anew for every wish, and one of which a better is known may give way to it.
 */
export function keepsAsItLies(plan: Plan, seen: Wishes, wanted: Partial<Wishes>): boolean {
  if (plan.asked.sheets !== undefined || plan.otherwise !== undefined) return false;
  const { pins, ...rest } = wanted;
  if (pins === undefined || Object.keys(rest).length > 0) return false;
  const before = seen.pins ?? [];
  if (!before.every((pin) => pins.some((one) => samePin(one, pin)))) return false;
  return pins.every((pin) => before.some((one) => samePin(one, pin)) || liesThere(plan, pin));
}

function liesThere({ cards }: Plan, { card, layer, sheet, side, supply }: Pin): boolean {
  const there = cards.find(({ number }) => number === card)?.layers;
  const now = there?.find((one) => one.layer === layer);
  if (now === undefined) return false;
  const isSo = (wish: string | undefined, so: string | undefined): boolean =>
    wish === undefined || wish === so;
  return isSo(sheet, now.sheet) && isSo(side, now.side) && isSo(supply, now.supply);
}
