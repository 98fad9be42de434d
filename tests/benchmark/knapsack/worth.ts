/** A size of piece that may be cut up to `most` times, each worth `value`; it may not be turned. */
export interface Ware {
  readonly width: number;
  readonly height: number;
  readonly value: number;
  readonly most: number;
}

/** One sheet and what may be cut from it, in whole steps. */
export interface Market {
  readonly width: number;
  readonly height: number;
  readonly wares: readonly Ware[];
}

/** Bounds on what parts of the sheet can be worth, by width and height. */
export interface Worth {
  /** Ends of sums of widths from 0 up to the sheet, and of heights. */
  readonly xs: Int32Array;
  readonly ys: Int32Array;
  /** Index of the last end up to a length. */
  readonly xAt: Int32Array;
  readonly yAt: Int32Array;
  /** At [x index * number of ys + y index]: no part of this size is worth more. */
  readonly inside: Float64Array;
  /** Likewise: what is cut around a part of this size is not worth more. */
  readonly around: Float64Array;
}

/**
 * Upper bounds by dynamic programming over cuts, without counting copies except by area.
 *
 * inside(w, h)  the most that a part is worth: one piece, or two parts beside or above each other,
 *               and never more than the copies at hand are worth by their area alone.
 * around(w, h)  the most that the sheet adds to a part of this size in its corner, when the part is
 *               grown step by step to the whole sheet.
 *
 * Source  unbounded recursion and normal patterns: Gilmore, Gomory (1966), Oper. Res. 14, 1045-1074,
 *         doi:10.1287/opre.14.6.1045; growing a part to the sheet: Viswanathan, Bagchi (1993), Oper.
 *         Res. 41, 768-776, doi:10.1287/opre.41.4.768.
 */
export function worthOf(market: Market): Worth {
  const { width, height, wares } = market;
  const xs = ends(wares, width, (ware) => ware.width);
  const ys = ends(wares, height, (ware) => ware.height);
  const xAt = lastEnds(xs, width);
  const yAt = lastEnds(ys, height);
  const byArea = worthByArea(market);
  const inside = insideTable(market, { xs, ys, xAt, yAt }, byArea);
  const around = aroundTable(market, { xs, ys, xAt, yAt }, inside, byArea);
  return { xs, ys, xAt, yAt, inside, around };
}

type Ends = Pick<Worth, 'xs' | 'ys' | 'xAt' | 'yAt'>;

function insideTable(
  { wares }: Market,
  { xs, ys, xAt, yAt }: Ends,
  byArea: Float64Array,
): Float64Array {
  const columns = ys.length;
  const table = new Float64Array(xs.length * columns);
  for (const { width, height, value } of wares) {
    const at = xAt[width]! * columns + yAt[height]!;
    if (value > table[at]!) table[at] = value;
  }
  for (let i = 1; i < xs.length; i++) {
    const x = xs[i]!;
    const row = i * columns;
    for (let j = 1; j < columns; j++) {
      let best = Math.max(table[row + j]!, table[row + j - 1]!, table[row - columns + j]!);
      const y = ys[j]!;
      for (let k = 1; 2 * ys[k]! <= y; k++) {
        const sum = table[row + k]! + table[row + yAt[y - ys[k]!]!]!;
        if (sum > best) best = sum;
      }
      table[row + j] = best;
    }
    for (let k = 1; 2 * xs[k]! <= x; k++) {
      const [left, right] = [k * columns, xAt[x - xs[k]!]! * columns];
      for (let j = 1; j < columns; j++) {
        const sum = table[left + j]! + table[right + j]!;
        if (sum > table[row + j]!) table[row + j] = sum;
      }
    }
    for (let j = 1; j < columns; j++) {
      let best = Math.max(table[row + j]!, table[row + j - 1]!);
      const y = ys[j]!;
      for (let k = 1; 2 * ys[k]! <= y; k++) {
        const sum = table[row + k]! + table[row + yAt[y - ys[k]!]!]!;
        if (sum > best) best = sum;
      }
      table[row + j] = Math.min(best, byArea[x * y]!);
    }
  }
  return table;
}

function aroundTable(
  { width, height }: Market,
  { xs, ys, xAt, yAt }: Ends,
  inside: Float64Array,
  byArea: Float64Array,
): Float64Array {
  const columns = ys.length;
  const table = new Float64Array(xs.length * columns);
  for (let i = xs.length - 1; i >= 0; i--) {
    const row = i * columns;
    const spare = xAt[width - xs[i]!]!;
    for (let j = 0; j < columns; j++) {
      if (i + 1 < xs.length) table[row + j] = table[row + columns + j]!;
    }
    for (let p = 1; p <= spare; p++) {
      const [grown, strip] = [xAt[xs[i]! + xs[p]!]! * columns, p * columns];
      for (let j = 0; j < columns; j++) {
        const sum = table[grown + j]! + inside[strip + j]!;
        if (sum > table[row + j]!) table[row + j] = sum;
      }
    }
    for (let j = columns - 1; j >= 0; j--) {
      let best = table[row + j]!;
      if (j + 1 < columns && table[row + j + 1]! > best) best = table[row + j + 1]!;
      const y = ys[j]!;
      const room = yAt[height - y]!;
      for (let p = 1; p <= room; p++) {
        const sum = table[row + yAt[y + ys[p]!]!]! + inside[row + p]!;
        if (sum > best) best = sum;
      }
      table[row + j] = Math.min(best, byArea[width * height - xs[i]! * y]!);
    }
  }
  return table;
}

/** The most that the copies at hand are worth in so much area: a bounded knapsack. */
function worthByArea({ width, height, wares }: Market): Float64Array {
  const whole = width * height;
  const table = new Float64Array(whole + 1);
  for (const { width: w, height: h, value, most } of wares) {
    const area = w * h;
    for (let left = Math.min(most, Math.floor(whole / area)), part = 1; left > 0; part *= 2) {
      const copies = Math.min(part, left);
      left -= copies;
      const [cost, gain] = [copies * area, copies * value];
      for (let at = whole; at >= cost; at--) {
        const sum = table[at - cost]! + gain;
        if (sum > table[at]!) table[at] = sum;
      }
    }
  }
  return table;
}

function ends(wares: readonly Ware[], limit: number, sideOf: (ware: Ware) => number): Int32Array {
  const reached = new Uint8Array(limit + 1);
  reached[0] = 1;
  const sides = [...new Set(wares.map(sideOf))];
  for (let at = 0; at <= limit; at++)
    if (reached[at]) for (const side of sides) if (at + side <= limit) reached[at + side] = 1;
  return Int32Array.from([...reached.keys()].filter((at) => reached[at] === 1));
}

function lastEnds(list: Int32Array, limit: number): Int32Array {
  const last = new Int32Array(limit + 1);
  for (let at = 0, index = 0; at <= limit; at++) {
    if (index + 1 < list.length && list[index + 1]! <= at) index++;
    last[at] = index;
  }
  return last;
}
