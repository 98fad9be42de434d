import type { Layer } from '../layouts/layout.ts';
import { scoreCard } from './card-score.ts';
import type { Shown } from './card-score.ts';
import type { CardModel } from './card-model.ts';
import type { Instance } from './instance.ts';
import type { ChosenCard, ChosenLayer, Choice } from './plan.ts';
import type { Option } from './options.ts';
import { calledAlike } from './called-alike.ts';
import { reasonsOf } from './reasons.ts';
import type { Chosen } from './reasons.ts';
import { whyOf } from './why.ts';

/** The cards of a choice of designs, each with its best sides and cardstock, its score and its reasons. */
export function readCards(instance: Instance, designs: readonly number[]): ChosenCard[] {
  return instance.cards.map(({ model, table }) => {
    const best = table.best(designs);
    return chosenCard(
      instance,
      model,
      model.parts.map((part, at) => part.options[best[at]!]!),
    );
  });
}

function chosenCard(instance: Instance, model: CardModel, options: readonly Option[]): ChosenCard {
  const { ask, book } = instance;
  const { layers } = model.card.layout;
  const partOf = (layer: Layer): number =>
    model.parts.findIndex((part) => part.layers.includes(layer));
  const shown = (layer: Layer): Shown => {
    const part = partOf(layer);
    return book.shown(options[part]!, layer, model.parts[part]!.pieces);
  };
  const { score, links } = scoreCard(model.links, shown, book.table, ask.taste);
  const alike = calledAlike(
    links.map(({ link }) => [shown(link.a), shown(link.b)]),
    book.table,
  );
  const chosen: Chosen = {
    links: model.links,
    judged: links,
    layers,
    shown: (layer) => {
      const one = shown(layer);
      return { ...one, look: alike(one.look) };
    },
    pinned: pinnedOf(ask, model),
    table: book.table,
    taste: ask.taste,
  };
  return {
    number: model.card.number,
    layout: model.card.layout.id,
    layers: layers.map((layer): ChosenLayer => {
      const part = partOf(layer);
      return {
        layer: layer.id,
        role: layer.role,
        choice: choiceOf(instance, options[part]!, model.parts[part]!.slot),
      };
    }),
    score,
    ...whyOf(chosen, score, (side) => labelOf(instance, side)),
    reasons: reasonsOf(chosen),
  };
}

/** The layers whose paper or cardstock is hers to say, by a pin on one layer of it. */
function pinnedOf({ pins }: Instance['ask'], { card, parts }: CardModel): string[] {
  const own = pins.filter((pin) => pin.card === card.number);
  return parts.flatMap(({ layers }) =>
    layers.some(({ id }) => own.some((pin) => pin.layer === id)) ? layers.map(({ id }) => id) : [],
  );
}

function choiceOf(instance: Instance, option: Option, slot: number | null): Choice {
  if (option.kind === 'supply') return { kind: 'supply', supply: option.supply.id };
  if (option.kind === 'wanted') return { kind: 'wanted', lab: option.lab };
  return {
    kind: 'paper',
    slot: instance.ask.scheme.slots[slot!]!.id,
    sheet: option.sheet,
    side: option.side.id,
  };
}

/** How a side is called: its sheet's label, with which face it is. */
function labelOf(instance: Instance, side: string): string {
  for (const { sheet } of instance.designs) {
    if (sheet.front?.id === side) return `${sheet.label} (front)`;
    if (sheet.back?.id === side) return `${sheet.label} (back)`;
  }
  return side;
}
