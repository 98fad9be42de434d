import type { Pad } from '../../server/contract/pads.ts';
import type { Plan } from '../../server/contract/plans.ts';
import { changedCards } from './changed-cards.ts';
import { slotsOf } from './slots-of.ts';

type Slots = Readonly<Record<string, string>>;

/**
 * The sheets of the plan before, changed no further than what she has pinned since asks for: the sheet that she
 * wants comes into the slot of that layer, and what lay there goes where the wanted one lay, if no copy is left.
 * null where no fewer cards would change by it, or where the two plans are not cut alike.
 */
export function asFew(before: Plan, after: Plan, pad: Pad): Slots | null {
  const [was, is] = [slotsOf(before), slotsOf(after)];
  if (Object.keys(was).sort().join() !== Object.keys(is).sort().join()) return null;
  const old = new Set((before.asked.pins ?? []).map((pin) => JSON.stringify(pin)));
  const slots = { ...was };
  for (const pin of after.asked.pins ?? []) {
    if (pin.side === undefined || old.has(JSON.stringify(pin))) continue;
    const wanted = sheetAt(after, pin.card, pin.layer);
    const slot = slotOf(before, slots, pin.card, sheetAt(before, pin.card, pin.layer));
    if (wanted === undefined || slot === undefined) return null;
    if (slots[slot] === wanted) continue;
    const there = Object.keys(slots).filter((one) => slots[one] === wanted);
    const copies = pad.sheets.find(({ id }) => id === wanted)?.copies ?? 1;
    if (there.length >= copies) slots[there[0]!] = slots[slot]!;
    slots[slot] = wanted;
  }
  const touched = before.sheetsUsed.filter(({ slot, sheet }) => slots[slot] !== sheet);
  const cards = new Set(touched.flatMap((used) => used.cards));
  return cards.size < changedCards(before, after).length ? slots : null;
}

function sheetAt({ cards }: Plan, card: number, layer: string): string | undefined {
  const found = cards.find(({ number }) => number === card);
  return found?.layers.find((one) => one.layer === layer)?.sheet;
}

/** The slot with a sheet that gives a piece to a card. */
function slotOf(
  plan: Plan,
  slots: Slots,
  card: number,
  sheet: string | undefined,
): string | undefined {
  return plan.sheetsUsed.find(
    (used) => used.cards.includes(card) && used.sheet === sheet && slots[used.slot] === sheet,
  )?.slot;
}
