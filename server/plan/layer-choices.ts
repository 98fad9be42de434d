import type { PlanAsk } from './ask.ts';
import { factorsOf } from './card-factors.ts';
import { modelCard } from './card-model.ts';
import type { CardModel, Part } from './card-model.ts';
import { clashOf, said } from './clash.ts';
import { createLookBook } from './look-book.ts';
import { cutDown } from './network/dominated.ts';
import { maximiseOut } from './network/eliminate.ts';
import type { Factor } from './network/factor.ts';
import { cardstockOptions, designsOf, paperOptions } from './options.ts';
import type { Option } from './options.ts';
import type { Choice, Pin, Plan } from './plan.ts';
import { possible, wishesOf } from './wishes.ts';
import type { Wish } from './wishes.ts';

/** What could lie in a layer, and whether her other wishes let it. */
export interface LayerChoice {
  readonly choice: { readonly sheet: string; readonly side: string } | { readonly supply: string };
  /** True for what lies there now. */
  readonly now: boolean;
  /** What the card would score with it, its other papers left as they are, its cardstock at its best. */
  readonly score: number;
  readonly allowed: boolean;
  /** Her pins that stand in its way. */
  readonly forbiddenBy: readonly Pin[];
  /** Why it is not allowed, with what she can do; null when it is. */
  readonly because: string | null;
}

/** Whether another pin deals the pieces to the sheets anew, so that no slot stands in its way. */
export interface LayerAsk {
  readonly card: number;
  readonly layer: string;
  readonly free: boolean;
}

/**
 * Every side of the pad, or every cardstock of hers, for one layer of one card: what is allowed first, the best of
 * that first. A pin that lies on the layer itself is no hindrance, as the new one takes its place.
 */
export function layerChoices(ask: PlanAsk, plan: Plan, where: LayerAsk): LayerChoice[] {
  const { card: number, layer: id, free } = where;
  const others = ask.pins.filter(({ card, layer }) => card !== number || layer !== id);
  const bare = { ...ask, pins: free ? others.filter(({ card }) => card === number) : others };
  const model = openedCard(ask, number);
  const at = model.parts.findIndex(({ layers }) => layers.some((layer) => layer.id === id));
  const now = chosenOptions(model, plan);
  const scoreOf = scorer(ask, model, at, now);
  return model.parts[at]!.options.flatMap((option, place): LayerChoice[] => {
    const choice = named(option);
    if (choice === null) return [];
    const wished = { card: number, layer: id, ...choice };
    return [{ choice, now: now[at] === place, score: scoreOf(place), ...hindrance(bare, wished) }];
  }).sort((a, b) => Number(b.allowed) - Number(a.allowed) || b.score - a.score);
}

/** The card with every side and every cardstock in each of its parts. */
function openedCard(ask: PlanAsk, number: number): CardModel {
  const card = ask.cards.find((one) => one.number === number)!;
  const designs = designsOf(ask.pad.sheets);
  const papers = paperOptions(designs);
  const model = modelCard(
    { ...ask, pins: [] },
    card,
    papers,
    cardstockOptions(ask.supplies, designs),
  );
  const parts = model.parts.map((part): Part =>
    part.slot === null ? part : { ...part, options: papers },
  );
  return { ...model, parts };
}

function chosenOptions(model: CardModel, plan: Plan): number[] {
  const { layers } = plan.cards.find((card) => card.number === model.card.number)!;
  return model.parts.map((part) => {
    const { choice } = layers.find(({ layer }) => layer === part.layers[0]!.id)!;
    return part.options.findIndex((option) => isChosen(option, choice));
  });
}

function isChosen(option: Option, choice: Choice): boolean {
  if (option.kind === 'paper') return choice.kind === 'paper' && option.side.id === choice.side;
  if (option.kind === 'supply')
    return choice.kind === 'supply' && option.supply.id === choice.supply;
  return (
    choice.kind === 'wanted' && JSON.stringify(option.lab) === JSON.stringify({ ...choice.lab })
  );
}

/** What the card scores when one part takes an option: papers stay, other cardstock is at its best. */
function scorer(
  ask: PlanAsk,
  model: CardModel,
  at: number,
  now: readonly number[],
): (option: number) => number {
  const papers = [...model.parts.keys()].filter(
    (part) => part !== at && model.parts[part]!.slot !== null,
  );
  const stock = [...model.parts.keys()].filter(
    (part) => part !== at && model.parts[part]!.slot === null,
  );
  const fixed = papers.reduce<readonly Factor[]>(
    (factors, part) => factors.map((factor) => cutDown(factor, part, [Math.max(0, now[part]!)])),
    factorsOf(model, createLookBook(ask)),
  );
  return (option) => {
    const narrow = fixed.map((factor) => cutDown(factor, at, [option]));
    const { factors } = maximiseOut(narrow, stock, (part) => model.parts[part]!.options.length);
    return factors.reduce((sum, { data }) => sum + data[0]!, 0);
  };
}

function named(option: Option): LayerChoice['choice'] | null {
  if (option.kind === 'paper') return { sheet: option.sheet, side: option.side.id };
  return option.kind === 'supply' ? { supply: option.supply.id } : null;
}

function hindrance(
  bare: PlanAsk,
  wished: Pin,
): Pick<LayerChoice, 'allowed' | 'forbiddenBy' | 'because'> {
  const ask = { ...bare, pins: [...bare.pins, wished] };
  const wishes = wishesOf(ask);
  if (possible(ask, wishes)) return { allowed: true, forbiddenBy: [], because: null };
  const clash = clashOf(ask, wishes).filter((wish) => !isPin(wish, wished));
  return {
    allowed: false,
    forbiddenBy: clash.flatMap((wish) => (wish.kind === 'pin' ? [wish.pin] : [])),
    because: sentence(ask, clash),
  };
}

function isPin(wish: Wish, pin: Pin): boolean {
  return wish.kind === 'pin' && wish.pin === pin;
}

function sentence(ask: PlanAsk, clash: readonly Wish[]): string {
  const wishes = clash.map((wish) => said(ask, wish)).join('; ');
  if (clash.length === 0) return 'No sheet of it is left for this card.';
  return clash.length === 1
    ? `It does not go with your wish: ${wishes}. Take that back first.`
    : `It does not go with your wishes: ${wishes}. Take one of them back first.`;
}
