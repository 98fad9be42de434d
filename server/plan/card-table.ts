import type { CardModel, Part } from './card-model.ts';
import { factorsOf } from './card-factors.ts';
import { cellReader, designTable, scaledBy, WHOLE } from './design-table.ts';
import type { Among, Scaled } from './design-table.ts';
import type { LookBook } from './look-book.ts';
import { cutDown, undominated } from './network/dominated.ts';
import { decode, maximiseOut } from './network/eliminate.ts';
import { valueAt } from './network/factor.ts';
import type { Factor } from './network/factor.ts';
import type { Wide } from './network/network.ts';
import { stockStates } from './stock-states.ts';
import type { StockStates } from './stock-states.ts';

/** Cards of more than two papers are written out as one table only up to this many cells. */
const CELLS = 4096;

/** What a card scores for every choice of designs in its slots, with sides and cardstock at their best. */
export interface CardTable {
  /** Exact, over slot numbers and designs; null for a card of many papers. */
  readonly factor: Factor | null;
  /** For a card of many papers: bounds over two slots at a time, and its true worth on request. */
  readonly wide: Wide | null;
  /** Number of the option of each part when the slots are cut from these designs. */
  best(designs: readonly number[]): number[];
}

/** Maximises cardstock and sides out exactly. */
export function tableOf(card: CardModel, book: LookBook, designs: number): CardTable {
  const slim = withoutDominated(card.parts, factorsOf(card, book));
  const best = (choice: readonly number[]): number[] => bestOptions(card.parts, slim, choice);
  const papers = slim.papers;
  if (papers.some((part) => slim.kept[part]!.length === 0))
    return { factor: emptyTable(card.parts, papers, designs), wide: null, best };
  const states = statesOf(slim);
  const slots = papers.map((part) => card.parts[part]!.slot!);
  if (new Set(slots).size < slots.length)
    throw new RangeError('Expected different papers of one card in different slots');
  const shows = papers.map((part) => optionsByDesign(card.parts[part]!, slim.kept[part]!, designs));
  const every = Array.from({ length: designs }, (_, design) => design);
  const whole = scaledBy(states, WHOLE);
  const over = (chosen: readonly number[], scaled: Scaled): Factor => {
    const lists = chosen.map(() => every);
    return {
      scope: chosen.map((paper) => slots[paper]!),
      sizes: chosen.map(() => designs),
      data: designTable(scaled, chosen, amongOf(chosen, shows, lists)),
    };
  };
  const all = papers.map((_, at) => at);
  if (papers.length <= 2 || designs ** papers.length <= CELLS)
    return { factor: over(all, whole), wide: null, best };
  const k = papers.length;
  const shared = scaledBy(states, { worth: 2 / (k * (k - 1)), alone: 1 / (k - 1), pair: 1 });
  const wide: Wide = {
    scope: slots,
    upper: pairsOf(all).map((two) => over(two, shared)),
    at: remembered(slots, designs, cellReader(whole, shows)),
    exact: (lists) => designTable(whole, all, amongOf(all, shows, lists)),
  };
  return { factor: null, wide, best };
}

interface Slim {
  readonly papers: readonly number[];
  readonly stock: readonly number[];
  /** Numbers of the options of each part that are left. */
  readonly kept: readonly (readonly number[])[];
  /** Over the options that are left. */
  readonly factors: readonly Factor[];
}

/**
 * Leaves out the cardstock and the sides that something else always beats. A side is only compared with
 * the other side of its design. Papers stand in the order of their slots.
 */
function withoutDominated(parts: readonly Part[], whole: readonly Factor[]): Slim {
  let factors = [...whole];
  const kept = parts.map((part, at) => {
    const designOf = (option: number): number => {
      const one = part.options[option]!;
      return one.kind === 'paper' ? one.design : -1;
    };
    const left = undominated(
      factors,
      at,
      part.options.length,
      (a, b) => designOf(a) === designOf(b),
    );
    factors = factors.map((factor) => cutDown(factor, at, left));
    return left;
  });
  const numbers = parts.map((_, at) => at);
  return {
    papers: numbers
      .filter((at) => parts[at]!.slot !== null)
      .sort((a, b) => parts[a]!.slot! - parts[b]!.slot!),
    stock: numbers.filter((at) => parts[at]!.slot === null),
    kept,
    factors,
  };
}

/** Maximises out the cardstock that touches one paper at most; joins the rest into states. */
function statesOf(slim: Slim): StockStates {
  const sizeOf = (part: number): number => slim.kept[part]!.length;
  let factors = slim.factors;
  const stock: number[] = [];
  for (const part of slim.stock) {
    const near = factors.filter((factor) => factor.scope.includes(part));
    const papers = new Set(
      near.flatMap((factor) => factor.scope.filter((other) => slim.papers.includes(other))),
    );
    if (papers.size <= 1) ({ factors } = maximiseOut(factors, [part], sizeOf));
    else stock.push(part);
  }
  return stockStates(factors, slim.papers, stock, sizeOf);
}

/** For each design the places, among the kept options, of those that show it. */
function optionsByDesign(part: Part, kept: readonly number[], designs: number): number[][] {
  const shows = Array.from({ length: designs }, (): number[] => []);
  kept.forEach((option, place) => {
    const chosen = part.options[option]!;
    if (chosen.kind === 'paper') shows[chosen.design]!.push(place);
  });
  return shows;
}

/** The options that show the listed designs, with the places of these in their lists. */
function amongOf(
  chosen: readonly number[],
  shows: readonly (readonly (readonly number[])[])[],
  lists: readonly (readonly number[])[],
): Among {
  const options: Int32Array[] = [];
  const place: Int32Array[] = [];
  chosen.forEach((paper, at) => {
    const own: number[] = [];
    const where: number[] = [];
    lists[at]!.forEach((design, number) => {
      for (const option of shows[paper]![design]!) {
        own.push(option);
        where.push(number);
      }
    });
    options.push(Int32Array.from(own));
    place.push(Int32Array.from(where));
  });
  const step = new Array<number>(chosen.length);
  let cells = 1;
  for (let at = chosen.length - 1; at >= 0; at--) {
    step[at] = cells;
    cells *= lists[at]!.length;
  }
  return { options, place, step, cells };
}

function emptyTable(parts: readonly Part[], papers: readonly number[], designs: number): Factor {
  return {
    scope: papers.map((part) => parts[part]!.slot!),
    sizes: papers.map(() => designs),
    data: new Float64Array(designs ** papers.length).fill(-Infinity),
  };
}

function pairsOf(list: readonly number[]): [number, number][] {
  return list.flatMap((a, i) => list.slice(i + 1).map((b): [number, number] => [a, b]));
}

/** Reads the card's worth off a choice for all slots, each cell worked out once. */
function remembered(
  slots: readonly number[],
  designs: number,
  read: (designs: readonly number[]) => number,
): Wide['at'] {
  const known = new Map<number, number>();
  return (choice) => {
    let key = 0;
    for (const slot of slots) key = key * designs + choice[slot]!;
    let worth = known.get(key);
    if (worth === undefined) {
      worth = read(slots.map((slot) => choice[slot]!));
      known.set(key, worth);
    }
    return worth;
  };
}

/** The best sides for given designs, by trying all; cardstock maximised out exactly for each. */
function bestOptions(parts: readonly Part[], slim: Slim, designs: readonly number[]): number[] {
  const choice = parts.map(() => 0);
  let best = [...choice];
  let most = -Infinity;
  const fixed: number[] = parts.map(() => -1);
  const tryOut = (at: number): void => {
    if (at === slim.papers.length) {
      const narrow = slim.papers.reduce<readonly Factor[]>(
        (factors, part) => factors.map((factor) => cutDown(factor, part, [fixed[part]!])),
        slim.factors,
      );
      const { factors, buckets } = maximiseOut(
        narrow,
        slim.stock,
        (part) => slim.kept[part]!.length,
      );
      const zero = parts.map(() => 0);
      const sum = factors.reduce((total, factor) => total + valueAt(factor, zero), 0);
      if (sum <= most) return;
      most = sum;
      decode(buckets, zero);
      best = zero.map((value, part) => (fixed[part] === -1 ? value : fixed[part]!));
      return;
    }
    const part = slim.papers[at]!;
    slim.kept[part]!.forEach((number, place) => {
      const option = parts[part]!.options[number]!;
      if (option.kind !== 'paper' || option.design !== designs[parts[part]!.slot!]) return;
      fixed[part] = place;
      tryOut(at + 1);
    });
  };
  tryOut(0);
  return best.map((place, part) => slim.kept[part]![place]!);
}
