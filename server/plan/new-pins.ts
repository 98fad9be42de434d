import type { Sheet } from '../pad/pad.ts';
import type { ChosenCard, Pin } from './plan.ts';

/** The pins of a paper that were not there before; those that keep a cardstock or an ink move no paper. */
export function newPins(before: readonly Pin[], now: readonly Pin[]): Pin[] {
  const old = new Set(before.map((pin) => JSON.stringify(pin)));
  return now.filter((pin) => pin.supply === undefined && !old.has(JSON.stringify(pin)));
}

/** The sheet that a pin wants; undefined where the pad has none such. */
export function sheetOf(sheets: readonly Sheet[], pin: Pin): Sheet | undefined {
  return sheets.find(
    ({ id, front, back }) => id === pin.sheet || [front?.id, back?.id].includes(pin.side),
  );
}

/** The slot that gives the layer of a pin its paper; null where no paper lies there. */
export function slotHolding(cards: readonly ChosenCard[], { card, layer }: Pin): string | null {
  const layers = cards.find(({ number }) => number === card)?.layers ?? [];
  const choice = layers.find((one) => one.layer === layer)?.choice;
  return choice?.kind === 'paper' ? choice.slot : null;
}
