import type { PlanAsk } from './ask.ts';
import { modelCard } from './card-model.ts';
import type { CardModel } from './card-model.ts';
import { tableOf } from './card-table.ts';
import type { CardTable } from './card-table.ts';
import { refuseImpossible } from './clash.ts';
import { createLookBook } from './look-book.ts';
import type { LookBook } from './look-book.ts';
import type { Network } from './network/network.ts';
import { cardstockOptions, designsOf, paperOptions } from './options.ts';
import type { Design } from './options.ts';

/** The ask worked out into tables: what the solver reads, and what is needed to read its answer. */
export interface Instance {
  readonly ask: PlanAsk;
  readonly designs: readonly Design[];
  readonly book: LookBook;
  readonly cards: readonly { readonly model: CardModel; readonly table: CardTable }[];
  readonly network: Network;
}

/** Builds the instance; throws a Refusal when no plan can meet the ask. */
export function instanceOf(ask: PlanAsk): Instance {
  refuseImpossible(ask);
  const designs = designsOf(ask.pad.sheets, ask.without);
  const book = createLookBook(ask);
  const papers = paperOptions(designs);
  const cardstock = cardstockOptions(ask.supplies, designs);
  const cards = ask.cards.map((card) => {
    const model = modelCard(ask, card, papers, cardstock);
    return { model, table: tableOf(model, book, designs.length) };
  });
  const network: Network = {
    allowed: ask.scheme.slots.map((_, slot) => allowed(slot, cards, designs.length)),
    copies: designs.map(({ sheet }) => sheet.copies),
    factors: cards.flatMap(({ table }) => table.factor ?? []),
    wides: cards.flatMap(({ table }) => table.wide ?? []),
  };
  return { ask, designs, book, cards, network };
}

/** The designs that keep the pins of every card cut from the slot. */
function allowed(slot: number, cards: Instance['cards'], designs: number): number[] {
  const parts = cards.flatMap(({ model }) => model.parts.filter((part) => part.slot === slot));
  return Array.from({ length: designs }, (_, design) => design).filter((design) =>
    parts.every((part) =>
      part.options.some((option) => option.kind === 'paper' && option.design === design),
    ),
  );
}
