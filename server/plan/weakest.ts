import { layerNames } from '../layouts/layer-names.ts';
import type { PlanAsk } from './ask.ts';
import { words } from './coordination/words.ts';
import { instanceOf } from './instance.ts';
import type { Instance } from './instance.ts';
import { valueAt } from './network/factor.ts';
import type { ChosenCard, Plan } from './plan.ts';
import { cardsOf, chosenDesigns } from './plan-desk.ts';
import type { Swap } from './plan-desk.ts';
import { readCards } from './read-plan.ts';
import { cardstockOptions } from './options.ts';
import type { Lab } from '../colour/lab.ts';

/** One thing that would make a card better. */
export interface Mend {
  readonly text: string;
  /** What the card gains, and what the whole plan gains (it may lose). */
  readonly card: number;
  readonly plan: number;
  /** The cardstock to buy, when that is the mend, and what its layers are called. */
  readonly wanted?: { readonly lab: Lab; readonly layers: readonly string[] };
  /** The other sheet, when that is the mend. */
  readonly swap?: Swap;
}

export interface WeakestCard {
  readonly number: number;
  readonly score: number;
  /** The most helpful first; empty when nothing on the table would help. */
  readonly mends: readonly Mend[];
  /** Whether a sheet would better it that lies on other cards already, or takes more from them than it gives. */
  readonly taken: boolean;
}

/** Gains smaller than this are not worth a word. */
const WORTH_SAYING = 0.005;
const MENDS = 3;

/**
 * The card of the plan with the lowest score, and what would mend it: another sheet, another cardstock. What costs
 * the other cards more than twice what this one gains is no mend.
 */
export function weakestCard(ask: PlanAsk, plan: Plan): WeakestCard | null {
  const weakest = plan.cards.reduce<ChosenCard | null>(
    (least, card) => (least === null || card.score < least.score ? card : least),
    null,
  );
  if (weakest === null) return null;
  const instance = instanceOf(ask);
  const better = [
    ...sheetMends(instance, plan, weakest),
    ...stockMends(instance, plan, weakest),
  ].filter((mend) => mend.card > WORTH_SAYING);
  const mends = better
    .filter((mend) => mend.plan >= -mend.card)
    .sort((a, b) => b.card - a.card)
    .slice(0, MENDS);
  const dear = better.some((mend) => mend.swap !== undefined && mend.plan < -mend.card);
  const taken = dear || hasBetterInUse(instance, plan, weakest);
  return { number: weakest.number, score: weakest.score, mends, taken };
}

/** Other sheets of the pad in one slot of the card, with the rest of the plan left as it is. */
function sheetMends(instance: Instance, plan: Plan, weakest: ChosenCard): Mend[] {
  const { designs, network, ask } = instance;
  const now = chosenDesigns(instance, plan);
  const used = designs.map((_, design) => now.filter((one) => one === design).length);
  return slotsOf(instance, weakest.number).flatMap((slot) => {
    const tried = network.allowed[slot]!.filter(
      (design) => design !== now[slot] && used[design]! < network.copies[design]!,
    ).map((design) => {
      const choice = now.map((one, at) => (at === slot ? design : one));
      return { design, card: cardWorth(instance, weakest.number, choice), choice };
    });
    if (tried.length === 0) return [];
    const best = tried.reduce((one, other) => (other.card > one.card ? other : one));
    const whole = ask.cards.reduce(
      (sum, { number }) => sum + cardWorth(instance, number, best.choice),
      0,
    );
    return [
      {
        text: `${designs[best.design]!.sheet.label} in the place of ${designs[now[slot]!]!.sheet.label}`,
        card: best.card - weakest.score,
        plan: whole - plan.value,
        swap: {
          slot: ask.scheme.slots[slot]!.id,
          from: designs[now[slot]!]!.sheet.id,
          to: designs[best.design]!.sheet.id,
          cards: cardsOf(ask.scheme.slots[slot]!),
        },
      },
    ];
  });
}

/** Whether a sheet of which no copy is left would make the card better in one of its slots. */
function hasBetterInUse(instance: Instance, plan: Plan, weakest: ChosenCard): boolean {
  const { network } = instance;
  const now = chosenDesigns(instance, plan);
  const inUse = new Set(now);
  return slotsOf(instance, weakest.number).some((slot) =>
    network.allowed[slot]!.some((design) => {
      if (design === now[slot] || !inUse.has(design)) return false;
      const choice = now.map((one, at) => (at === slot ? design : one));
      return cardWorth(instance, weakest.number, choice) - weakest.score > WORTH_SAYING;
    }),
  );
}

/** The slots that give a card its pieces. */
function slotsOf({ cards }: Instance, number: number): number[] {
  const { model } = cards.find(({ model: one }) => one.card.number === number)!;
  return model.parts.flatMap((part) => (part.slot === null ? [] : [part.slot]));
}

/** Cardstock that she could buy, taken without the discount of having to buy it. */
function stockMends(instance: Instance, plan: Plan, weakest: ChosenCard): Mend[] {
  const { ask, designs } = instance;
  const wanted = cardstockOptions(ask.supplies, designs).flatMap((option) =>
    option.kind === 'wanted' ? [option.lab] : [],
  );
  const { layout } = ask.cards.find(({ number }) => number === weakest.number)!;
  const names = layerNames(layout.layers, layout.card);
  return wanted.map((lab): Mend => {
    const bought = {
      id: `bought ${words(lab)}`,
      kind: 'cardstock' as const,
      name: words(lab),
      lab,
      uncertainty: 0,
      photo: null,
      sheets: null,
    };
    const richer = instanceOf({
      ...ask,
      cards: ask.cards.filter(({ number }) => number === weakest.number),
      pins: ask.pins.filter(({ card }) => card === weakest.number),
      supplies: [...ask.supplies, bought],
    });
    const [card] = readCards(richer, chosenDesigns(instance, plan));
    const gain = card!.score - weakest.score;
    const layers = card!.layers
      .filter(({ choice }) => choice.kind === 'supply' && choice.supply === bought.id)
      .map(({ layer }) => names.get(layer)!);
    return {
      text: `${words(lab)} cardstock, to buy, for the ${layers.join(' and the ')}`,
      card: gain,
      plan: gain,
      wanted: { lab, layers },
    };
  });
}

function cardWorth(instance: Instance, number: number, choice: readonly number[]): number {
  const { table } = instance.cards.find(({ model }) => model.card.number === number)!;
  if (table.factor !== null) return valueAt(table.factor, choice);
  return table.wide!.exact(table.wide!.scope.map((slot) => [choice[slot]!]))[0]!;
}
