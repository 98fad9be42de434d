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
  /** The numbers of all states. */
  readonly every: Int32Array;
  readonly worth: Float64Array;
  readonly alone: readonly Float64Array[];
  /** The same, state by state with the options side by side. */
  readonly byState: readonly Float64Array[];
  /** For each paper: by how much, at [rival][state], the state can at most be ahead of the rival. */
  readonly lead: readonly Float64Array[];
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
  const { options } = states;
  const alone = states.alone.map((row) => row.map((value) => value * parts.alone));
  const byState = alone.map((row, paper) => turned(row, options[paper]!, states.count));
  return {
    states: states.count,
    every: Int32Array.from([...states.worth.keys()]),
    worth: states.worth.map((value) => value * parts.worth),
    alone,
    byState,
    lead: byState.map((rows, paper) => leads(rows, options[paper]!, states.count)),
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

/**
 * The best score of a card for every choice of designs, over all sides and all cardstock: a walk over
 * the papers in turn that carries, for every state of the cardstock, the sum so far, and goes on with
 * only those states that can still be best.
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
  const hopes = hopesOf(count, alone, among);
  const leadsOf = papers.map((paper) => card.lead[paper]!);
  const tables = papers.map((later, at) =>
    papers.slice(0, at).map((earlier) => card.pair[earlier]![later]!),
  );
  const widths = papers.map((paper) => card.options[paper]!);
  const rows = papers.map((_, at) => new Int32Array(at));
  const sums = Array.from({ length: depth }, () => new Float64Array(count));
  const active = Array.from({ length: depth }, () => new Int32Array(count));
  const last = depth - 1;
  const lastOptions = among.options[last]!;
  const lastPlace = among.place[last]!;
  const lastByState = card.byState[papers[last]!]!;
  const lastWidth = widths[last]!;
  const best = new Float64Array(lastOptions.length);

  /** All options of the last paper at once. */
  const finish = (
    cell: number,
    base: number,
    before: Float64Array,
    open: Int32Array,
    width: number,
  ): void => {
    best.fill(-Infinity);
    for (let slot = 0; slot < width; slot++) {
      const state = open[slot]!;
      const begun = base + before[state]!;
      const from = state * lastWidth;
      for (let number = 0; number < lastOptions.length; number++) {
        const value = begun + lastByState[from + lastOptions[number]!]!;
        if (value > best[number]!) best[number] = value;
      }
    }
    for (let earlier = 0; earlier < last; earlier++) {
      const pair = tables[last]![earlier]!;
      const row = rows[last]![earlier]!;
      for (let number = 0; number < lastOptions.length; number++)
        best[number]! += pair[row + lastOptions[number]!]!;
    }
    for (let number = 0; number < lastOptions.length; number++) {
      const at = cell + lastPlace[number]!;
      if (best[number]! > out[at]!) out[at] = best[number]!;
    }
  };

  const walk = (
    at: number,
    cell: number,
    base: number,
    before: Float64Array,
    open: Int32Array,
    width: number,
  ): void => {
    if (at === last) {
      finish(cell, base, before, open, width);
      return;
    }
    const options = among.options[at]!;
    const place = among.place[at]!;
    const step = among.step[at]!;
    const own = alone[at]!;
    const pairs = tables[at]!;
    const row = rows[at]!;
    const now = sums[at]!;
    const still = active[at]!;
    const hope = hopes[at]!;
    for (let number = 0; number < options.length; number++) {
      const option = options[number]!;
      let sum = base;
      for (let earlier = 0; earlier < at; earlier++)
        sum += pairs[earlier]![row[earlier]! + option]!;
      const from = option * count;
      let rival = open[0]!;
      let strongest = -Infinity;
      for (let slot = 0; slot < width; slot++) {
        const state = open[slot]!;
        const value = before[state]! + own[from + state]!;
        now[state] = value;
        if (value + hope[state]! > strongest) {
          strongest = value + hope[state]!;
          rival = state;
        }
      }
      still[0] = rival;
      let left = 1;
      const row0 = rival * count;
      for (let slot = 0; slot < width; slot++) {
        const state = open[slot]!;
        let ahead = now[state]! - now[rival]!;
        for (let later = at + 1; later < depth; later++) ahead += leadsOf[later]![row0 + state]!;
        if (ahead > 0 && state !== rival) still[left++] = state;
      }
      for (let later = at + 1; later < depth; later++) rows[later]![at] = option * widths[later]!;
      walk(at + 1, cell + place[number]! * step, sum, now, still, left);
    }
  };
  walk(0, 0, 0, card.worth, card.every, count);
  return out;
}

function turned(row: Float64Array, options: number, states: number): Float64Array {
  const out = new Float64Array(row.length);
  for (let option = 0; option < options; option++)
    for (let state = 0; state < states; state++)
      out[state * options + option] = row[option * states + state]!;
  return out;
}

/** For each place in the walk and each state, what the later papers add at their best. */
function hopesOf(count: number, alone: readonly Float64Array[], among: Among): Float64Array[] {
  const hopes: Float64Array[] = [];
  let hope = new Float64Array(count);
  for (let at = alone.length - 1; at >= 0; at--) {
    hopes[at] = hope;
    hope = hope.slice();
    const most = new Float64Array(count).fill(-Infinity);
    for (const option of among.options[at]!) {
      for (let state = 0; state < count; state++) {
        const value = alone[at]![option * count + state]!;
        if (value > most[state]!) most[state] = value;
      }
    }
    for (let state = 0; state < count; state++) hope[state]! += most[state]!;
  }
  return hopes;
}

function leads(byState: Float64Array, options: number, states: number): Float64Array {
  const out = new Float64Array(states * states);
  for (let rival = 0; rival < states; rival++) {
    for (let state = 0; state < states; state++) {
      let most = -Infinity;
      for (let option = 0; option < options; option++) {
        const lead = byState[state * options + option]! - byState[rival * options + option]!;
        if (lead > most) most = lead;
      }
      out[rival * states + state] = most;
    }
  }
  return out;
}
