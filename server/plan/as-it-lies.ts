import { Refusal } from '../refusals/refusal.ts';
import { instanceOf } from './instance.ts';
import type { Instance } from './instance.ts';
import { newPins, sheetOf, slotHolding } from './new-pins.ts';
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
  const plan = slots && planned(instance, best, slots);
  if (plan === null || isDear(plan, best)) return best;
  const touched = madeOtherwise(before.plan.cards, plan.cards);
  if (touched.length >= madeOtherwise(before.plan.cards, best.cards).length) return best;
  return naming(plan, best);
}

/**
 * The plan before on cuts by which only pieces of `cards` come from another sheet than before: every other card is
 * made of what it was. Null where that cannot be, or costs more than `DEAR` for each card against the best plan
 * of these cuts, which it names where that one is better.
 */
export function inPlace(
  instance: Instance,
  best: Plan,
  before: Before,
  cards: readonly number[],
): Plan | null {
  const { slots } = before.plan;
  const others = before.plan.cards.filter(({ number }) => !cards.includes(number));
  const isMoved = (plan: Plan): boolean =>
    madeOtherwise(before.plan.cards, plan.cards).some((card) => !cards.includes(card));
  let plan = planned(instance, best, slots);
  // A piece that lies elsewhere on its sheet shows other colours, for which its other side may do better.
  if (plan !== null && isMoved(plan)) plan = planned(holding(instance, others), best, slots);
  if (plan === null || isMoved(plan) || isDear(plan, best)) return null;
  return naming(plan, best);
}

/** The instance with each layer of these cards held as it is; these are no wishes of hers, so the ask stays. */
function holding(instance: Instance, cards: readonly ChosenCard[]): Instance {
  const { ask } = instance;
  const held = cards.flatMap(({ number, layers }) =>
    layers.flatMap(({ layer, choice }): Pin[] =>
      choice.kind === 'paper'
        ? [{ card: number, layer, side: choice.side }]
        : choice.kind === 'supply'
          ? [{ card: number, layer, supply: choice.supply }]
          : [],
    ),
  );
  return { ...instanceOf({ ...ask, pins: [...ask.pins, ...held] }), ask };
}

function isDear(plan: Plan, best: Plan): boolean {
  return plan.value < best.value - DEAR * best.cards.length;
}

/** A plan that says which better one is known, if there is one. */
function naming(plan: Plan, best: Plan): Plan {
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
  for (const pin of newPins(before.pins, pins)) {
    const sheet = sheetOf(pad.sheets, pin);
    const slot = slotHolding(before.plan.cards, pin);
    if (sheet === undefined || slot === null) return null;
    if (slots[slot] === sheet.id) continue;
    const there = Object.keys(slots).filter((one) => slots[one] === sheet.id);
    if (there.length >= sheet.copies) slots[there[0]!] = slots[slot]!;
    slots[slot] = sheet.id;
  }
  return slots;
}

/** The numbers of the cards that are made of something else. */
function madeOtherwise(before: readonly ChosenCard[], after: readonly ChosenCard[]): number[] {
  const was = new Map(before.map(({ number, layers }) => [number, JSON.stringify(layers)]));
  return after
    .filter(({ number, layers }) => was.get(number) !== JSON.stringify(layers))
    .map(({ number }) => number);
}
