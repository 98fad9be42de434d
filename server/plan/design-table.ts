import type { StockStates } from './stock-states.ts';

/** Options of each paper that take part, design by design. */
export interface Among {
  /** For each paper the numbers of its options. */
  readonly options: readonly Int32Array[];
  /** For each paper the place of each of these options in the table: its design's. */
  readonly place: readonly Int32Array[];
  /** For each paper how far the table's cells of two neighbouring designs are apart. */
  readonly step: readonly number[];
  readonly cells: number;
}

/** The parts of a card's score scaled for one use, so that many tables can be made from them. */
export interface Scaled {
  readonly states: number;
  readonly worth: Float64Array;
  /** For each paper: option by option, the states side by side. */
  readonly alone: readonly Float64Array[];
  /** The best of each option over all states. */
  readonly most: readonly Float64Array[];
  /** pair[earlier][later], options of the earlier paper in rows. */
  readonly pair: readonly (readonly Float64Array[])[];
  readonly options: readonly number[];
}

/** What the parts of the score are scaled by when a card is shared out over several tables. */
export interface Parts {
  readonly worth: number;
  readonly alone: number;
  readonly pair: number;
}

export const WHOLE: Parts = { worth: 1, alone: 1, pair: 1 };

/** Scales the parts of a card's score; papers that are not judged together get noughts. */
export function scaledBy(states: StockStates, parts: Parts): Scaled {
  const { options, count } = states;
  const alone = states.alone.map((row) => row.map((value) => value * parts.alone));
  return {
    states: count,
    worth: states.worth.map((value) => value * parts.worth),
    alone,
    most: alone.map((row, paper) => bestOfStates(row, options[paper]!, count)),
    pair: options.map((rows, earlier) =>
      options.map((columns, later) => {
        const table = states.pair[earlier]![later];
        return table == null
          ? new Float64Array(rows * columns)
          : table.map((value) => value * parts.pair);
      }),
    ),
    options,
  };
}

function bestOfStates(row: Float64Array, options: number, states: number): Float64Array {
  const out = new Float64Array(options).fill(-Infinity);
  for (let option = 0, cell = 0; option < options; option++)
    for (let state = 0; state < states; state++, cell++)
      if (row[cell]! > out[option]!) out[option] = row[cell]!;
  return out;
}

/**
 * The best score of a card for every choice of designs, over all sides and all cardstock: a walk over
 * the papers in turn that carries, for every state of the cardstock, the sum so far. At the last
 * paper the states are tried from the most promising down, as long as one can still be best.
 *
 * @param papers which papers of the card take part, ascending, in the order of `among`
 */
export function designTable(card: Scaled, papers: readonly number[], among: Among): Float64Array {
  const out = new Float64Array(among.cells).fill(-Infinity);
  const depth = papers.length;
  const count = card.states;
  if (depth === 0) {
    out[0] = Math.max(...card.worth);
    return out;
  }
  const alone = papers.map((paper) => card.alone[paper]!);
  const tables = papers.map((later, at) =>
    papers.slice(0, at).map((earlier) => card.pair[earlier]![later]!),
  );
  const widths = papers.map((paper) => card.options[paper]!);
  const rows = papers.map((_, at) => new Int32Array(at));
  const sums = Array.from({ length: depth }, () => new Float64Array(count));
  const last = depth - 1;
  const lastMost = card.most[papers[last]!]!;
  const ranked = new Int32Array(count);
  const height = new Float64Array(count);

  /** What the options so far are worth beside `option` at place `at` of the walk. */
  const beside = (at: number, option: number): number => {
    const pairs = tables[at]!;
    const row = rows[at]!;
    let sum = 0;
    for (let earlier = 0; earlier < at; earlier++) sum += pairs[earlier]![row[earlier]! + option]!;
    return sum;
  };
  const finish = (cell: number, base: number, before: Float64Array): void => {
    rank(before, height, ranked);
    const options = among.options[last]!;
    const place = among.place[last]!;
    const own = alone[last]!;
    for (let number = 0; number < options.length; number++) {
      const option = options[number]!;
      const begun = base + beside(last, option);
      const at = cell + place[number]!;
      const ceiling = lastMost[option]!;
      if (begun + height[0]! + ceiling <= out[at]!) continue;
      const from = option * count;
      let best = -Infinity;
      for (let slot = 0; slot < count && height[slot]! + ceiling > best; slot++) {
        const value = height[slot]! + own[from + ranked[slot]!]!;
        if (value > best) best = value;
      }
      if (begun + best > out[at]!) out[at] = begun + best;
    }
  };
  const walk = (at: number, cell: number, base: number, before: Float64Array): void => {
    if (at === last) {
      finish(cell, base, before);
      return;
    }
    const options = among.options[at]!;
    const place = among.place[at]!;
    const own = alone[at]!;
    const now = sums[at]!;
    for (let number = 0; number < options.length; number++) {
      const option = options[number]!;
      const from = option * count;
      for (let state = 0; state < count; state++) now[state] = before[state]! + own[from + state]!;
      for (let later = at + 1; later < depth; later++) rows[later]![at] = option * widths[later]!;
      walk(at + 1, cell + place[number]! * among.step[at]!, base + beside(at, option), now);
    }
  };
  walk(0, 0, 0, card.worth);
  return out;
}

/** Numbers the values from the greatest down, in `ranked`, and lists them so in `height`. */
function rank(values: Float64Array, height: Float64Array, ranked: Int32Array): void {
  for (let slot = 0; slot < values.length; slot++) {
    const value = values[slot]!;
    let hole = slot;
    for (; hole > 0 && height[hole - 1]! < value; hole--) {
      height[hole] = height[hole - 1]!;
      ranked[hole] = ranked[hole - 1]!;
    }
    height[hole] = value;
    ranked[hole] = slot;
  }
}

/**
 * One cell of the design table of all papers at a time, for those that are needed only now and then.
 * `shows[paper][design]` lists the options that show a design.
 */
export function cellReader(
  card: Scaled,
  shows: readonly (readonly (readonly number[])[])[],
): (designs: readonly number[]) => number {
  const { states, worth, alone, most, pair, options: widths } = card;
  const depth = shows.length;
  const sums = shows.map(() => new Float64Array(states));
  const chosen = new Int32Array(depth);
  let best = -Infinity;
  const read = (
    designs: readonly number[],
    at: number,
    base: number,
    before: Float64Array,
    top: number,
  ): void => {
    const own = alone[at]!;
    for (const option of shows[at]![designs[at]!]!) {
      let begun = base;
      for (let earlier = 0; earlier < at; earlier++)
        begun += pair[earlier]![at]![chosen[earlier]! * widths[at]! + option]!;
      const from = option * states;
      if (at < depth - 1) {
        const now = sums[at]!;
        let highest = -Infinity;
        for (let state = 0; state < states; state++) {
          const value = before[state]! + own[from + state]!;
          now[state] = value;
          if (value > highest) highest = value;
        }
        chosen[at] = option;
        read(designs, at + 1, begun, now, highest);
      } else if (begun + top + most[at]![option]! > best) {
        for (let state = 0; state < states; state++) {
          const value = begun + before[state]! + own[from + state]!;
          if (value > best) best = value;
        }
      }
    }
  };
  return (designs) => {
    best = -Infinity;
    read(designs, 0, 0, worth, Infinity);
    return best;
  };
}
