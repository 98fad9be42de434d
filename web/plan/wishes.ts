import type { Pin, Plan } from '../../server/contract/plans.ts';
import type { Step, Wishes } from './steps.ts';

/** The wishes behind a plan; when this device never made it, the cards it holds. */
export function wishesOf(plan: Plan, steps: readonly Step[]): Wishes {
  const step = steps.find((one) => one.plan === plan.id);
  return step?.wishes ?? { cards: cardsIn(plan) };
}

function cardsIn(plan: Plan): Wishes['cards'] {
  const cards: { layout: string; count: number }[] = [];
  for (const { layout } of plan.cards) {
    const last = cards.at(-1);
    if (last?.layout === layout) last.count += 1;
    else cards.push({ layout, count: 1 });
  }
  return cards;
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
