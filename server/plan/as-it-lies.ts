import { Refusal } from '../refusals/refusal.ts';
import type { Instance } from './instance.ts';
import type { ChosenCard, Pin, Plan } from './plan.ts';
import { chosenIn, planIn, ROUNDING } from './plan-with.ts';

/** A plan that lay on the table before, and the pins that it was made with. */
export interface Before {
  readonly plan: Pick<Plan, 'cards' | 'slots'>;
  readonly pins: readonly Pin[];
}

/** So much less, of 1 for each card, a plan may be worth for leaving other cards as they lie. A judgement: she sees scores in hundredths. */
export const DEAR = 0.01;

/**
 * The plan before, changed no further than the new pins ask, where that changes fewer cards than the best plan does
 * and costs no more than `DEAR` for each card; else the best plan. It names that one where it is better.
 *
 * Takes       the instance with the new pins, its best plan, and the plan before on the same slots.
 */
export function asItLies(instance: Instance, best: Plan, before: Before): Plan {
  const slots = slotsKept(instance.ask, before);
  if (slots === null) return best;
  const plan = planned(instance, best, slots);
  if (plan === null || plan.value < best.value - DEAR * best.cards.length) return best;
  const touched = madeOtherwise(before.plan.cards, plan.cards);
  if (touched.length >= madeOtherwise(before.plan.cards, best.cards).length) return best;
  if (plan.value >= best.value - ROUNDING) return plan;
  const cards = madeOtherwise(plan.cards, best.cards);
  return { ...plan, otherwise: { slots: best.slots, value: best.value, cards } };
}

/** Null where these sheets cannot lie so with all that she keeps. */
function planned(instance: Instance, best: Plan, slots: Plan['slots']): Plan | null {
  try {
    return planIn(instance, chosenIn(instance, slots), best);
  } catch (fault) {
    if (fault instanceof Refusal) return null;
    throw fault;
  }
}

/** The sheet of each new pin comes into the slot of its layer; what lay there goes where that one lay, if no copy is left. */
function slotsKept(
  { pad, pins, scheme }: Instance['ask'],
  before: Before,
): Record<string, string> | null {
  const slots: Record<string, string> = { ...before.plan.slots };
  if (scheme.slots.some(({ id }) => slots[id] === undefined)) return null;
  const old = new Set(before.pins.map((pin) => JSON.stringify(pin)));
  for (const pin of pins) {
    if (pin.supply !== undefined || old.has(JSON.stringify(pin))) continue;
    const sheet = pad.sheets.find(
      ({ id, front, back }) => id === pin.sheet || [front?.id, back?.id].includes(pin.side),
    );
    const slot = slotOf(before.plan.cards, pin);
    if (sheet === undefined || slot === null) return null;
    if (slots[slot] === sheet.id) continue;
    const there = Object.keys(slots).filter((one) => slots[one] === sheet.id);
    if (there.length >= sheet.copies) slots[there[0]!] = slots[slot]!;
    slots[slot] = sheet.id;
  }
  return slots;
}

function slotOf(cards: readonly ChosenCard[], { card, layer }: Pin): string | null {
  const layers = cards.find(({ number }) => number === card)?.layers ?? [];
  const choice = layers.find((one) => one.layer === layer)?.choice;
  return choice?.kind === 'paper' ? choice.slot : null;
}

/** The numbers of the cards that are made of something else. */
function madeOtherwise(before: readonly ChosenCard[], after: readonly ChosenCard[]): number[] {
  const was = new Map(before.map(({ number, layers }) => [number, JSON.stringify(layers)]));
  return after
    .filter(({ number, layers }) => was.get(number) !== JSON.stringify(layers))
    .map(({ number }) => number);
}
