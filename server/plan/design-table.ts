import type { StockStates } from './stock-states.ts';

/** Options of each paper that take part, design by design. */
export interface Among {
  /** For each paper the numbers of its options. */
  readonly options: readonly (readonly number[])[];
  /** For each paper the place of each of these options in the table: its design's. */
  readonly place: readonly (readonly number[])[];
  /** For each paper how far the table's cells of two neighbouring designs are apart. */
  readonly step: readonly number[];
  readonly cells: number;
}

/** What the parts of the score are scaled by when a card is shared out over several tables. */
export interface Parts {
  readonly worth: number;
  readonly alone: number;
  readonly pair: number;
}

export const WHOLE: Parts = { worth: 1, alone: 1, pair: 1 };

/**
 * The best score of a card for every choice of designs, over all sides and all cardstock: a walk over
 * the papers in turn that carries, for every state of the cardstock, the sum so far, and goes on with
 * only those states that can still be best.
 *
 * @param papers which papers of the card take part, in the order of `among`
 */
export function designTable(
  states: StockStates,
  papers: readonly number[],
  among: Among,
  parts: Parts,
): Float64Array {
  const out = new Float64Array(among.cells).fill(-Infinity);
  const depth = papers.length;
  const { count } = states;
  if (depth === 0) {
    out[0] = Math.max(...states.worth) * parts.worth;
    return out;
  }
  const alone = papers.map((paper) => states.alone[paper]!);
  const rest = restOf(states, alone, among, parts.alone);
  const pairs = papers.map((one, later) =>
    papers.slice(0, later).map((other) => pairOf(states, other, one)),
  );
  const chosen = new Array<number>(depth).fill(0);
  const sums = Array.from({ length: depth }, () => new Float64Array(count));
  const active = Array.from({ length: depth }, () => new Int32Array(count));
  const begin = states.worth.map((value) => value * parts.worth);
  const all = Int32Array.from({ length: count }, (_, state) => state);
  const last = depth - 1;

  const walk = (
    at: number,
    cell: number,
    base: number,
    before: Float64Array,
    open: Int32Array,
    width: number,
  ): void => {
    const options = among.options[at]!;
    const place = among.place[at]!;
    const step = among.step[at]!;
    const own = alone[at]!;
    const scale = parts.alone;
    for (let number = 0; number < options.length; number++) {
      const option = options[number]!;
      let sum = base;
      const tables = pairs[at]!;
      for (let earlier = 0; earlier < at; earlier++) {
        const table = tables[earlier];
        if (table != null) sum += parts.pair * table.value(chosen[earlier]!, option);
      }
      const from = option * count;
      const next = cell + place[number]! * step;
      if (at === last) {
        let most = -Infinity;
        for (let slot = 0; slot < width; slot++) {
          const state = open[slot]!;
          const value = before[state]! + scale * own[from + state]!;
          if (value > most) most = value;
        }
        most += sum;
        if (most > out[next]!) out[next] = most;
        continue;
      }
      const now = sums[at]!;
      let sure = -Infinity;
      const { least, most } = rest[at]!;
      for (let slot = 0; slot < width; slot++) {
        const state = open[slot]!;
        const value = before[state]! + scale * own[from + state]!;
        now[state] = value;
        if (value + least[state]! > sure) sure = value + least[state]!;
      }
      const still = active[at]!;
      let left = 0;
      for (let slot = 0; slot < width; slot++) {
        const state = open[slot]!;
        if (now[state]! + most[state]! >= sure) still[left++] = state;
      }
      chosen[at] = option;
      walk(at + 1, next, sum, now, still, left);
    }
  };
  walk(0, 0, 0, begin, all, count);
  return out;
}

/** For each paper and state, the least and most that the later papers can still add. */
function restOf(
  states: StockStates,
  alone: readonly Float64Array[],
  among: Among,
  scale: number,
): { least: Float64Array; most: Float64Array }[] {
  const { count } = states;
  let least = new Float64Array(count);
  let most = new Float64Array(count);
  const rest: { least: Float64Array; most: Float64Array }[] = [];
  for (let at = alone.length - 1; at >= 0; at--) {
    rest[at] = { least, most };
    const [low, high] = [least.slice(), most.slice()];
    for (let state = 0; state < count; state++) {
      let [min, max] = [Infinity, -Infinity];
      for (const option of among.options[at]!) {
        const value = scale * alone[at]![option * count + state]!;
        if (value < min) min = value;
        if (value > max) max = value;
      }
      low[state]! += min;
      high[state]! += max;
    }
    least = low;
    most = high;
  }
  return rest;
}

function pairOf(
  states: StockStates,
  a: number,
  b: number,
): { value(first: number, second: number): number } | null {
  const [low, high] = a < b ? [a, b] : [b, a];
  const table = states.pair[low]![high];
  if (table == null) return null;
  const width = states.options[high]!;
  return a < b
    ? { value: (first, second) => table[first * width + second]! }
    : { value: (first, second) => table[second * width + first]! };
}
