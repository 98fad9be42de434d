import { isTied } from '../cutting/pairs-across.ts';
import { assign } from './network/assignment.ts';
import type { PlanAsk } from './ask.ts';
import { groupOf } from './links.ts';
import { designsOf } from './options.ts';
import type { Design, Option } from './options.ts';
import type { Pin } from './plan.ts';

/** One thing that she asked for and that the plan must keep. */
export type Wish =
  | { readonly kind: 'pin'; readonly pin: Pin }
  | { readonly kind: 'without'; readonly sheet: string };

export function wishesOf(ask: Pick<PlanAsk, 'pins' | 'without'>): Wish[] {
  return [
    ...ask.pins.map((pin): Wish => ({ kind: 'pin', pin })),
    ...ask.without.map((sheet): Wish => ({ kind: 'without', sheet })),
  ];
}

/** Whether an option keeps a pin on its layer. */
export function keeps(option: Option, pin: Pin): boolean {
  if (option.kind !== 'paper')
    return (
      pin.supply === undefined || (option.kind === 'supply' && option.supply.id === pin.supply)
    );
  return (
    (pin.sheet === undefined || option.sheet === pin.sheet) &&
    (pin.side === undefined || option.side.id === pin.side)
  );
}

/**
 * Whether some plan keeps all these wishes at once; scores play no part. Triangles of two cards that share a
 * rectangle show one side, so all pins on them speak of one and the same.
 */
export function possible(ask: PlanAsk, wishes: readonly Wish[]): boolean {
  const pins = wishes.flatMap((wish) => (wish.kind === 'pin' ? [wish.pin] : []));
  const without = wishes.flatMap((wish) => (wish.kind === 'without' ? [wish.sheet] : []));
  const designs = designsOf(ask.pad.sheets, without);
  const perSlot = ask.scheme.slots.map(() => new Float64Array(designs.length));
  for (const card of ask.cards) {
    const groups = new Map<string, Pin[]>();
    for (const pin of pins.filter((one) => one.card === card.number)) {
      const layer = card.layout.layers.find((one) => one.id === pin.layer);
      if (layer === undefined) continue;
      groups.set(groupOf(layer), [...(groups.get(groupOf(layer)) ?? []), pin]);
    }
    for (const layer of card.layout.layers) {
      const own = groups.get(groupOf(layer));
      if (own === undefined) continue;
      if (layer.material === 'cardstock') {
        if (new Set(own.flatMap((pin) => pin.supply ?? [])).size > 1) return false;
        continue;
      }
      const slot = ask.scheme.slots.findIndex(({ pieces }) =>
        pieces.some(({ piece }) => piece.card === card.number && piece.layer === layer.id),
      );
      designs.forEach((design, at) => {
        if (!fits(design, at, own)) perSlot[slot]![at] = -Infinity;
      });
    }
  }
  ask.scheme.slots.forEach((slot, number) => {
    const tied = pins.filter(({ card, layer }) => isTied(slot, card, layer));
    designs.forEach((design, at) => {
      if (!fits(design, at, tied)) perSlot[number]![at] = -Infinity;
    });
  });
  return (
    assign(
      perSlot,
      designs.map(({ sheet }) => sheet.copies),
    ) !== null
  );
}

function fits(design: Design, at: number, pins: readonly Pin[]): boolean {
  return design.sides.some((side) =>
    pins.every((pin) => keeps({ kind: 'paper', design: at, sheet: design.sheet.id, side }, pin)),
  );
}
