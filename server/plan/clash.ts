import { layerNames } from '../layouts/layer-names.ts';
import { expected, Refusal } from '../refusals/refusal.ts';
import type { PlanAsk } from './ask.ts';
import type { Pin } from './plan.ts';
import { enoughSheets } from './enough-sheets.ts';
import { smallestClash } from './smallest-clash.ts';
import { possible, wishesOf } from './wishes.ts';
import type { Wish } from './wishes.ts';

/** How often it may be asked whether some wishes hold while the smallest set that clashes is looked for. */
const MOST_ASKED = 6000;

/**
 * Refuses an ask that no plan can meet: too few sheets for the slots, wishes that speak of nothing on
 * the table, or wishes that clash; of these the smallest set is named that cannot all hold.
 */
export function refuseImpossible(ask: PlanAsk): void {
  enoughSheets(ask);
  ask.pins.forEach((pin, at) => understood(ask, pin, `pins[${at}]`));
  const wishes = wishesOf(ask);
  if (possible(ask, wishes)) return;
  const clash = clashOf(ask, wishes);
  throw new Refusal({
    kind: 'clash',
    field: clash.some((wish) => wish.kind === 'pin') ? 'pins' : 'without',
    received: clash.map((wish) => (wish.kind === 'pin' ? wish.pin : { without: wish.sheet })),
    message: `These wishes cannot all hold: ${clash.map((wish) => said(ask, wish)).join('; ')}.${whyOf(ask, clash)}`,
    mend: shareASlot(ask, clash)
      ? 'Take back one of them, or allow more sheets: some of these cards are cut from one sheet now.'
      : 'Take back one of them.',
  });
}

/** The smallest set of these wishes that cannot all hold. */
export function clashOf(ask: PlanAsk, wishes: readonly Wish[]): readonly Wish[] {
  return smallestClash(wishes, (some) => possible(ask, some), MOST_ASKED);
}

function understood(ask: PlanAsk, pin: Pin, field: string): void {
  const card = ask.cards.find(({ number }) => number === pin.card);
  if (card === undefined) throw missing('a card of the batch', `${field}.card`, pin.card);
  const layer = card.layout.layers.find(({ id }) => id === pin.layer);
  if (layer === undefined)
    throw missing(`a layer of '${card.layout.name}'`, `${field}.layer`, pin.layer);
  if (layer.material === 'cardstock' && (pin.sheet !== undefined || pin.side !== undefined))
    throw expected(
      'a cardstock',
      field,
      pin,
      `The layer '${pin.layer}' is cut from cardstock: pin a cardstock to it.`,
    );
  if (layer.material === 'patterned' && pin.supply !== undefined)
    throw expected(
      'a sheet of the pad',
      field,
      pin,
      `The layer '${pin.layer}' is cut from patterned paper: pin a sheet or a side to it.`,
    );
  const sides = ask.pad.sheets.flatMap((sheet) =>
    [sheet.front, sheet.back].flatMap((side) => (side === null ? [] : [{ sheet, side }])),
  );
  if (pin.sheet !== undefined && !sides.some(({ sheet }) => sheet.id === pin.sheet))
    throw missing('a sheet of the pad', `${field}.sheet`, pin.sheet);
  if (pin.side !== undefined && !sides.some(({ side }) => side.id === pin.side))
    throw missing('a side of the pad', `${field}.side`, pin.side);
  const stock = ask.supplies.find(({ id }) => id === pin.supply);
  if (pin.supply !== undefined && (stock?.kind !== 'cardstock' || stock.sheets === 0))
    throw missing('a cardstock that is left', `${field}.supply`, pin.supply);
}

function missing(what: string, field: string, received: unknown): Refusal {
  return expected(what, field, received, 'Choose one from the list on the page.', 'not-found');
}

/** Whether pins of different cards speak of one sheet's worth of pieces. */
function shareASlot(ask: PlanAsk, clash: readonly Wish[]): boolean {
  const pins = clash.flatMap((wish) => (wish.kind === 'pin' ? [wish.pin] : []));
  return ask.scheme.slots.some(({ pieces }) => {
    const cut = pins.filter(({ card, layer }) =>
      pieces.some(({ piece }) => piece.card === card && piece.layer === layer),
    );
    return new Set(cut.map(({ card }) => card)).size > 1;
  });
}

/** A wish in words: 'Sheet 3 on panel of card 2', 'without Sheet 4'. */
export function said(ask: PlanAsk, wish: Wish): string {
  const label = (id: string): string =>
    ask.pad.sheets.find((sheet) => sheet.id === id)?.label ?? id;
  if (wish.kind === 'without') return `without ${label(wish.sheet)}`;
  const { pin } = wish;
  const what = [
    ...(pin.sheet === undefined ? [] : [label(pin.sheet)]),
    ...(pin.side === undefined ? [] : [sideWords(ask, pin.side)]),
    ...(pin.supply === undefined
      ? []
      : [ask.supplies.find(({ id }) => id === pin.supply)?.name ?? pin.supply]),
  ];
  return `${what.join(', ')} on the ${layerCalled(ask, pin)} of card ${pin.card}`;
}

/** What the page calls the layer of a pin. */
function layerCalled(ask: PlanAsk, { card, layer }: Pin): string {
  const layout = ask.cards.find(({ number }) => number === card)?.layout;
  return (layout && layerNames(layout.layers, layout.card).get(layer)) ?? layer;
}

/** Why wishes for papers clash, where it is the cutting: too few copies of a sheet, or two sheets for pieces of one. */
function whyOf(ask: PlanAsk, clash: readonly Wish[]): string {
  const kept = clash.flatMap((wish) => {
    if (wish.kind !== 'pin') return [];
    const { pin } = wish;
    const sheet = ask.pad.sheets.find(
      ({ id, front, back }) => id === pin.sheet || [front?.id, back?.id].includes(pin.side),
    );
    const slot = ask.scheme.slots.find(({ pieces }) =>
      pieces.some(({ piece }) => piece.card === pin.card && piece.layer === pin.layer),
    );
    return sheet === undefined || slot === undefined ? [] : [{ sheet, slot }];
  });
  if (kept.length < 2 || kept.length < clash.length) return '';
  const slots = new Set(kept.map(({ slot }) => slot)).size;
  const sheets = new Set(kept.map(({ sheet }) => sheet));
  const [{ label, copies }] = [...sheets] as [(typeof kept)[number]['sheet']];
  if (sheets.size === 1 && slots > copies)
    return ` These pieces are cut from ${slots} sheets, and of ${label} there ${copies === 1 ? 'is 1' : `are ${copies}`}.`;
  if (sheets.size > 1 && slots === 1) return ' These pieces are cut from one and the same sheet.';
  return '';
}

function sideWords(ask: PlanAsk, id: string): string {
  for (const sheet of ask.pad.sheets) {
    if (sheet.front?.id === id) return `the front of ${sheet.label}`;
    if (sheet.back?.id === id) return `the back of ${sheet.label}`;
  }
  return id;
}
