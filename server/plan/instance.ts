import type { PlanAsk } from './ask.ts';
import { modelCard } from './card-model.ts';
import type { CardModel } from './card-model.ts';
import { createTables } from './card-table.ts';
import type { CardTable } from './card-table.ts';
import { refuseImpossible } from './clash.ts';
import { byPlace } from './faces-up.ts';
import { createLookBook } from './look-book.ts';
import type { LookBook } from './look-book.ts';
import type { Network } from './network/network.ts';
import { cardstockOptions, designsOf, paperOptions } from './options.ts';
import type { Design } from './options.ts';
import type { Pin } from './plan.ts';
import { uprightWherePossible } from './upright.ts';

/** The ask worked out into tables: what the solver reads, and what is needed to read its answer. */
export interface Instance {
  readonly ask: PlanAsk;
  readonly designs: readonly Design[];
  readonly book: LookBook;
  readonly cards: readonly { readonly model: CardModel; readonly table: CardTable }[];
  readonly network: Network;
  /** Makes the tables of further cards; those that are alike come from memory. */
  readonly tableOf: (card: CardModel) => CardTable;
}

/** With few slots the search is quick on loose tables, with more it wants them written out. */
const FEW_SLOTS = 8;
const FEW_CELLS = 4096;
const MANY_CELLS = 40_000;

/**
 * Builds the instance; throws a Refusal when no plan can meet the ask. An `earlier` instance of the same
 * pad, supplies and taste lends the tables of the cards whose pins and cuts are still the same.
 */
export function instanceOf(ask: PlanAsk, earlier?: Instance): Instance {
  refuseImpossible(ask);
  const designs = designsOf(ask.pad.sheets);
  const lender = earlier !== undefined && sameTable(earlier.ask, ask) ? earlier : undefined;
  const book = lender?.book ?? createLookBook(ask);
  if (lender !== undefined && lender.ask.scheme !== ask.scheme) book.learn(ask.scheme);
  const papers = paperOptions(designs);
  const cardstock = cardstockOptions(ask.supplies, designs);
  const tableOf =
    lender?.tableOf ??
    createTables(book, {
      designs: designs.length,
      cells: ask.scheme.slots.length > FEW_SLOTS ? MANY_CELLS : FEW_CELLS,
      byPlace: byPlace(ask.pad),
      faceOf: (slot) => ask.up?.[ask.scheme.slots[slot]!.id] ?? 'front',
    });
  const cards = ask.cards.map((card) => {
    const lent = lender?.cards.find(
      ({ model }) =>
        lender.ask.scheme === ask.scheme &&
        model.card.number === card.number &&
        model.card.layout === card.layout &&
        samePins(lender.ask.pins, ask.pins, card.number),
    );
    if (lent !== undefined) return lent;
    const model = modelCard(ask, card, papers, cardstock);
    return { model, table: tableOf(model) };
  });
  const copies = designs.map(({ sheet }) => sheet.copies);
  const network: Network = {
    allowed: uprightWherePossible(
      ask.scheme.slots.map((_, slot) => allowed(ask, slot, cards, designs)),
      cards.map(({ model }) => model),
      copies,
    ),
    copies,
    factors: cards.flatMap(({ table }) => table.factor ?? []),
    wides: cards.flatMap(({ table }) => table.wide ?? []),
  };
  return { ask, designs, book, cards, network, tableOf };
}

function sameTable(a: PlanAsk, b: PlanAsk): boolean {
  return (
    a.pad === b.pad &&
    sameSlots(a.scheme, b.scheme) &&
    a.supplies === b.supplies &&
    JSON.stringify(a.up) === JSON.stringify(b.up) &&
    JSON.stringify(a.taste) === JSON.stringify(b.taste)
  );
}

/** Whether a table speaks of the same slots in both; what is cut from them may differ. */
function sameSlots(a: PlanAsk['scheme'], b: PlanAsk['scheme']): boolean {
  const ids = ({ slots }: PlanAsk['scheme']): string => JSON.stringify(slots.map(({ id }) => id));
  return a === b || (JSON.stringify(a.sheet) === JSON.stringify(b.sheet) && ids(a) === ids(b));
}

function samePins(a: readonly Pin[], b: readonly Pin[], card: number): boolean {
  const own = (pins: readonly Pin[]): string =>
    JSON.stringify(pins.filter((pin) => pin.card === card));
  return own(a) === own(b);
}

/** The designs that are not to be left out and keep the pins of every card cut from the slot. */
function allowed(
  ask: PlanAsk,
  slot: number,
  cards: Instance['cards'],
  designs: readonly Design[],
): number[] {
  const parts = cards.flatMap(({ model }) => model.parts.filter((part) => part.slot === slot));
  return [...designs.keys()].filter(
    (design) =>
      !ask.without.includes(designs[design]!.sheet.id) &&
      parts.every((part) =>
        part.options.some((option) => option.kind === 'paper' && option.design === design),
      ),
  );
}
