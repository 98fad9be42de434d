import { fullest, poolOf } from './fullest.ts';
import type { Lot, Work } from './lots.ts';
import type { Oracle } from './oracle.ts';

/**
 * Fills sheet after sheet, each with the largest lot that is left and what goes best with it, and
 * repeats a sheet as long as there are lots of the same sizes: sheets cut alike can be stacked.
 */
export function fillSlots(work: Work, oracle: Oracle): Lot[][] {
  const left = [...work.lots].sort((a, b) => b.area - a.area || a.index - b.index);
  const slots: Lot[][] = [];
  while (left.length > 0) {
    const slot = fillOne(left, work, oracle);
    take(left, slot);
    slots.push(slot);
    for (;;) {
      const again = alike(slot, left, work);
      if (again === null) break;
      take(left, again);
      slots.push(again);
    }
  }
  return slots;
}

function fillOne(left: readonly Lot[], work: Work, oracle: Oracle): Lot[] {
  const first = left[0]!;
  let slot = [first];
  for (;;) {
    const others = left.filter(
      (lot) => !slot.includes(lot) && slot.every((member) => work.mayShare(member, lot)),
    );
    const pool = poolOf(slot, thinned(others, work), oracle);
    if (pool.length === slot.length) return packedOn(slot, others, work, oracle);
    const fuller = fullest(pool, slot, work, oracle, (lot) => lot.area);
    if (fuller === null || fuller.length === slot.length)
      return packedOn(slot, others, work, oracle);
    slot = fuller;
  }
}

/** When the tables have grown too large: adds what still fits, one by one. */
function packedOn(slot: readonly Lot[], others: readonly Lot[], work: Work, oracle: Oracle): Lot[] {
  const full = [...slot];
  for (const lot of others) {
    const welcome = full.every((member) => work.mayShare(member, lot));
    if (welcome && oracle.fits([...full, lot])) full.push(lot);
  }
  return full;
}

/** One lot a card and size, the largest first, as many of a size as one sheet could hold. */
function thinned(lots: readonly Lot[], { width, height }: Work): Lot[] {
  const taken = new Map<string, number>();
  return lots.filter((lot) => {
    const count = taken.get(lot.type) ?? 0;
    if ((count + 1) * lot.area > width * height) return false;
    taken.set(lot.type, count + 1);
    return true;
  });
}

/** Other lots of the same sizes as those of a slot, or null. */
function alike(slot: readonly Lot[], left: readonly Lot[], work: Work): Lot[] | null {
  const found: Lot[] = [];
  for (const wanted of slot) {
    const lot = left.find(
      (other) =>
        other.type === wanted.type &&
        !found.includes(other) &&
        found.every((member) => work.mayShare(member, other)),
    );
    if (lot === undefined) return null;
    found.push(lot);
  }
  return found;
}

function take(left: Lot[], slot: readonly Lot[]): void {
  for (const lot of slot) left.splice(left.indexOf(lot), 1);
}
