import { TABLE_WORK, fullest, poolOf } from './fullest.ts';
import type { Lot, Work } from './lots.ts';
import type { Oracle } from './oracle.ts';
import { seeded } from './seeded.ts';
import type { CutSettings } from './settings.ts';

/**
 * Tries to do with fewer sheets: empties the emptiest one, then refills sheet after sheet as fully as
 * can be from its own lots and the homeless ones, until none is homeless or the tries are used up.
 */
export function spareSheets(
  start: readonly (readonly Lot[])[],
  fewest: number,
  work: Work,
  oracle: Oracle,
  settings: CutSettings,
): (readonly Lot[])[] {
  const random = seeded(settings.seed);
  let best = [...start];
  for (let tries = settings.steps; tries > 0 && best.length > fewest;) {
    const search = new Refill(best, work, oracle, random);
    while (tries > 0 && !search.done()) {
      if (settings.until?.() === true) return best;
      search.step();
      tries--;
    }
    if (!search.done()) return best;
    best = search.slots;
  }
  return best;
}

/** How much emptier, of a sheet, a refilled sheet may be. */
const SLACK = 0.02;

/**
 * Pairs of selections that the table of a refill may cost, by the part of the sheet that may be lost: what is
 * nearly full has few selections that are left. Half of the time a larger table sees further. Tried on batches for
 * six sheets 97 % full that were the hardest of forty: 2 s on the average, 5.6 s with tables of two fifths.
 */
const FULL_WORK = 1_500_000;
const NEAR_FULL_WORK = 450_000;
const LOOSE_WORK = 2.5 * TABLE_WORK;
const WIDER = 2.4;

class Refill {
  readonly slots: (readonly Lot[])[];
  #homeless: readonly Lot[];
  readonly #work: Work;
  readonly #oracle: Oracle;
  readonly #random: () => number;
  readonly #sheet: number;
  /** How much dearer a table is than on a 6 in sheet to 1/4 in, dampened. */
  readonly #fineness: number;

  constructor(
    slots: readonly (readonly Lot[])[],
    work: Work,
    oracle: Oracle,
    random: () => number,
  ) {
    const byArea = [...slots].sort((a, b) => areaOf(b) - areaOf(a));
    this.#homeless = byArea.pop() ?? [];
    this.slots = byArea;
    this.#work = work;
    this.#oracle = oracle;
    this.#random = random;
    this.#sheet = work.width * work.height;
    this.#fineness = Math.max(1, Math.sqrt((work.width + work.height) / 48));
  }

  done(): boolean {
    return this.#homeless.length === 0;
  }

  /** Takes two sheets and the homeless lots, refills the first as fully as can be, then the second. */
  step(): void {
    const one = this.#any(this.slots.length);
    const other = (one + 1 + this.#any(this.slots.length - 1)) % this.slots.length;
    const before = [...this.slots[one]!, ...(one === other ? [] : this.slots[other]!)];
    const lots = [...before, ...this.#homeless];
    const first = this.#refill(this.slots[one]!, lots);
    if (first === null) return;
    const rest = lots.filter((lot) => !first.includes(lot));
    const stay = this.slots[other]!.filter((lot) => rest.includes(lot));
    const second = one === other ? [] : this.#refill(stay, rest);
    if (second === null) return;
    const worse = areaOf(before) - areaOf(first) - areaOf(second);
    if (worse > 0 && this.#random() > Math.exp((-60 * worse) / this.#sheet)) return;
    this.slots[one] = first;
    if (one !== other) this.slots[other] = second;
    this.#homeless = rest.filter((lot) => !second.includes(lot));
  }

  /** The fullest selection that is not much emptier than the sheet was. */
  #refill(own: readonly Lot[], lots: readonly Lot[]): Lot[] | null {
    const waste = Math.max(0, this.#sheet - areaOf(own)) + SLACK * this.#sheet;
    const share = waste / this.#sheet;
    const others = this.#shuffled(lots.filter((lot) => !own.includes(lot)));
    const usual = share < 0.1 ? FULL_WORK : share < 0.2 ? NEAR_FULL_WORK : LOOSE_WORK;
    const limit = this.#random() < 0.5 ? WIDER * usual : usual;
    const pool = poolOf(
      this.#shuffled(own).slice(0, 9),
      others,
      this.#oracle,
      limit / this.#fineness,
    );
    const noise = new Map(pool.map((lot) => [lot, lot.area * (1 + 0.1 * this.#random())]));
    return fullest(pool, [], this.#work, this.#oracle, (lot) => noise.get(lot)!, waste);
  }

  #shuffled(lots: readonly Lot[]): Lot[] {
    const shuffled = [...lots];
    for (let at = shuffled.length - 1; at > 0; at--) {
      const with_ = this.#any(at + 1);
      [shuffled[at], shuffled[with_]] = [shuffled[with_]!, shuffled[at]!];
    }
    return shuffled;
  }

  #any(below: number): number {
    return Math.floor(this.#random() * below);
  }
}

function areaOf(lots: readonly Lot[]): number {
  return lots.reduce((sum, lot) => sum + lot.area, 0);
}
