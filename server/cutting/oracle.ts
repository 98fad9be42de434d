import type { Lot, Work } from './lots.ts';
import { packingsOf, workOf } from './packings.ts';
import type { CutPlan, Kind, Packings } from './packings.ts';
import { luckyPacking, quickPacking, quickPackings } from './quick-packing.ts';
import { shelfPlans } from './shelves.ts';

/** While searching, larger selections than this are packed by rules of thumb only. */
const EXACT_WORK = 120_000;

/** A selection that someone has fixed is worth more patience: eleven different pieces are settled. */
const FIXED_WORK = 2_000_000;

/** Tries by chance before the exact table of such a selection: a few milliseconds that mostly spare it. */
const LUCKY_TRIES = 300;

/** On a sheet with less to spare (a part of it) chance finds nothing. */
const LOOSE = 0.04;

/** Part of what a sheet has to spare. */
const LITTLE = 0.4;

/** Cuts for the pieces of some lots; `CutPlan.kind` counts the kinds of the work. */
export interface Fitting {
  readonly plan: CutPlan | null;
  /** True when `plan` is null because it cannot be cut, not because none was found. */
  readonly exact: boolean;
}

/** Answers whether lots come out of one sheet, and remembers. */
export class Oracle {
  readonly #work: Work;
  readonly #known = new Map<string, Fitting>();

  constructor(work: Work) {
    this.#work = work;
  }

  fitting(lots: readonly Lot[]): Fitting {
    const counts = countsOf(lots);
    const key = [...counts].sort(([a], [b]) => a - b).join(' ');
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const found = this.#find(counts, EXACT_WORK);
    this.#known.set(key, found);
    return found;
  }

  fits(lots: readonly Lot[]): boolean {
    return this.fitting(lots).plan !== null;
  }

  /** Whether lots come out of one sheet, told exactly up to eleven different pieces and more alike ones. */
  settles(lots: readonly Lot[]): boolean {
    return this.fits(lots) || this.#find(countsOf(lots), FIXED_WORK).plan !== null;
  }

  /** The cuts for lots of which a table has said that they fit. */
  planOf(lots: readonly Lot[]): CutPlan {
    return this.fitting(lots).plan ?? this.#find(countsOf(lots), Infinity).plan!;
  }

  /** The same cuts, and all others that rules of thumb find: rows, columns, corner by corner. */
  plansOf(lots: readonly Lot[]): CutPlan[] {
    const { width, height } = this.#work;
    const counts = countsOf(lots);
    const [kinds, numbers] = [this.kindsOf(counts), [...counts.keys()]];
    const others = [...shelfPlans(kinds, width, height), ...quickPackings(kinds, width, height)];
    return [this.planOf(lots), ...others.map((plan) => renumbered(plan, numbers))];
  }

  #find(counts: ReadonlyMap<number, number>, most: number): Fitting {
    const { width, height } = this.#work;
    const numbers = [...counts.keys()];
    const kinds = this.kindsOf(counts);
    const area = kinds.reduce((sum, kind) => sum + kind.width * kind.height * kind.count, 0);
    if (area > width * height) return { plan: null, exact: true };
    const quick = quickPacking(kinds, width, height);
    if (quick !== null) return { plan: renumbered(quick, numbers), exact: true };
    const waste = width * height - area;
    const loose = most > EXACT_WORK && waste > LOOSE * width * height;
    if (loose) {
      const lucky = luckyPacking(kinds, width, height, LUCKY_TRIES);
      if (lucky !== null) return { plan: renumbered(lucky, numbers), exact: true };
    }
    if (workOf(kinds) > most) return { plan: null, exact: false };
    // Most that can be cut can be with little lost inside its parts, and that is told in half the time.
    for (const lost of loose ? [Math.floor(LITTLE * waste), waste] : [waste]) {
      const packings = packingsOf(kinds, width, height, lost);
      const plan = packings.cuts(kinds.map((kind) => kind.count));
      if (plan !== null) return { plan: renumbered(plan, numbers), exact: true };
    }
    return { plan: null, exact: true };
  }

  /** The table for every selection of these lots that wastes so much at most, and its columns. */
  table(lots: readonly Lot[], waste: number): { packings: Packings; numbers: readonly number[] } {
    const { width, height } = this.#work;
    const counts = countsOf(lots);
    return {
      packings: packingsOf(this.kindsOf(counts), width, height, waste),
      numbers: [...counts.keys()],
    };
  }

  kindsOf(counts: ReadonlyMap<number, number>): Kind[] {
    return [...counts].map(([kind, count]) => ({ ...this.#work.kinds[kind]!, count }));
  }
}

export function countsOf(lots: readonly Lot[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const lot of lots)
    for (const kind of lot.kinds) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  return counts;
}

function renumbered(plan: CutPlan, numbers: readonly number[]): CutPlan {
  if ('kind' in plan) return { ...plan, kind: numbers[plan.kind]! };
  return {
    ...plan,
    first: renumbered(plan.first, numbers),
    second: renumbered(plan.second, numbers),
  };
}
