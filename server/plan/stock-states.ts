import { constantFactor, strides } from './network/factor.ts';
import type { Factor } from './network/factor.ts';

/**
 * A card seen from its papers: all cardstock of the card together is one variable of `states`.
 * score(x, state) = worth[state] + sum of alone[i][x_i][state] + sum of pair[i][j][x_i][x_j].
 */
export interface StockStates {
  readonly count: number;
  readonly worth: Float64Array;
  /** For each paper: option by option, the states side by side. */
  readonly alone: readonly Float64Array[];
  /** pair[i][j] for i < j, or null where the two are not judged. */
  readonly pair: readonly (readonly (Float64Array | null)[])[];
  /** Counts of options of the papers. */
  readonly options: readonly number[];
}

/** Joins the cardstock variables into one and keeps only the states that can be best. */
export function stockStates(
  factors: readonly Factor[],
  papers: readonly number[],
  stock: readonly number[],
  sizeOf: (variable: number) => number,
): StockStates {
  const sizes = stock.map(sizeOf);
  const count = sizes.reduce((product, size) => product * size, 1);
  const options = papers.map(sizeOf);
  const worth = new Float64Array(count);
  const alone = options.map((size) => new Float64Array(size * count));
  const pair: (Float64Array | null)[][] = papers.map(() => papers.map(() => null));
  const digits = Array.from({ length: count }, (_, state) => digitsOf(state, sizes));
  for (const factor of factors) {
    const inside = factor.scope.filter((variable) => papers.includes(variable));
    const steps = strides(factor.sizes);
    const stepOf = (variable: number): number => {
      const at = factor.scope.indexOf(variable);
      return at < 0 ? 0 : steps[at]!;
    };
    const stockSteps = stock.map(stepOf);
    const offset = digits.map((list) =>
      list.reduce((sum, digit, at) => sum + digit * stockSteps[at]!, 0),
    );
    if (inside.length === 0) {
      for (let state = 0; state < count; state++) worth[state]! += factor.data[offset[state]!]!;
    } else if (inside.length === 1) {
      const at = papers.indexOf(inside[0]!);
      const step = stepOf(inside[0]!);
      const own = alone[at]!;
      for (let option = 0, cell = 0; option < options[at]!; option++)
        for (let state = 0; state < count; state++)
          own[cell++]! += factor.data[option * step + offset[state]!]!;
    } else {
      const [i, j] = inside.map((variable) => papers.indexOf(variable)).sort((a, b) => a - b);
      pair[i!]![j!] = oriented(factor, papers[i!]!, papers[j!]!);
    }
  }
  return fewer({ count, worth, alone, pair, options });
}

function oriented(factor: Factor, first: number, second: number): Float64Array {
  if (factor.scope[0] === first) return factor.data;
  const [columns, rows] = factor.sizes as [number, number];
  const out = constantFactor([first, second], [rows, columns]);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++)
      out.data[row * columns + column] = factor.data[column * rows + row]!;
  return out.data;
}

function digitsOf(state: number, sizes: readonly number[]): number[] {
  const digits = new Array<number>(sizes.length);
  let rest = state;
  for (let at = sizes.length - 1; at >= 0; at--) {
    digits[at] = rest % sizes[at]!;
    rest = Math.floor(rest / sizes[at]!);
  }
  return digits;
}

/** Drops the states that some other state beats whatever the papers are, the strongest tried first. */
function fewer(states: StockStates): StockStates {
  const strength = Array.from({ length: states.count }, (_, state) =>
    states.alone.reduce((sum, row, at) => {
      let own = 0;
      for (let cell = state; cell < row.length; cell += states.count) own += row[cell]!;
      return sum + own / states.options[at]!;
    }, states.worth[state]!),
  );
  const order = [...strength.keys()].sort((a, b) => strength[b]! - strength[a]!);
  const rows = byState(states);
  const kept: number[] = [];
  for (const state of order)
    if (!kept.some((other) => beaten(states, rows, state, other))) kept.push(state);
  return {
    ...states,
    count: kept.length,
    worth: Float64Array.from(kept, (state) => states.worth[state]!),
    alone: states.alone.map((row, at) => {
      const out = new Float64Array(states.options[at]! * kept.length);
      let cell = 0;
      for (let start = 0; start < row.length; start += states.count)
        for (const state of kept) out[cell++] = row[start + state]!;
      return out;
    }),
  };
}

/** What each state gives with each option of each paper, the options side by side. */
function byState(states: StockStates): Float64Array[][] {
  return states.alone.map((row, at) =>
    Array.from({ length: states.count }, (_, state) =>
      Float64Array.from(
        { length: states.options[at]! },
        (_, option) => row[option * states.count + state]!,
      ),
    ),
  );
}

function beaten(
  states: StockStates,
  rows: readonly (readonly Float64Array[])[],
  state: number,
  other: number,
): boolean {
  let lead = states.worth[state]! - states.worth[other]!;
  for (const row of rows) {
    const own = row[state]!;
    const rival = row[other]!;
    let most = -Infinity;
    for (let option = 0; option < own.length; option++) {
      const more = own[option]! - rival[option]!;
      if (more > most) most = more;
    }
    lead += most;
  }
  return lead <= 0;
}
