import {
  carryOver,
  curvesOf,
  joinParts,
  keepAlone,
  noteSole,
  placePiece,
  settleRow,
} from './curves.ts';
import type { Curves } from './curves.ts';
import type { CutPlan, Kind } from './packings.ts';

/**
 * What `packingsOf` keeps for every selection, filled from the small selections up. Selections are counted
 * by their number of each kind, the last kind in the highest place.
 */
export class PackingTable {
  readonly #kinds: readonly Kind[];
  readonly #radix: number[] = [];
  /** Least heights by width, and least widths by height. */
  readonly #tall: Curves;
  readonly #wide: Curves;
  readonly #alive: Uint8Array;
  readonly #waste: number;
  /** The least that a selection wastes within a part of its own. */
  readonly #wasted: Float64Array;
  /** Selections that can be cut, in rising order. */
  readonly #list: number[] = [];
  /** The smaller parts of the ways to part a selection that are worth looking at. */
  readonly #firsts: Int32Array;
  /** Counts of a selection side by side in bits, each with a guard bit above; -1 when they do not fit. */
  readonly #packed: Int32Array;
  readonly #shifts: readonly number[] | null;
  readonly #guards: number;
  /** True when there is one piece of every kind. */
  readonly #single: boolean;
  /** The least selection with a piece of the last kind of the selection at hand. */
  #lastPiece = 1;

  constructor(kinds: readonly Kind[], width: number, height: number, waste: number) {
    this.#kinds = kinds;
    this.#waste = waste;
    this.#single = kinds.every(({ count }) => count === 1);
    this.#shifts = shiftsOf(kinds);
    this.#guards = (this.#shifts ?? [])
      .slice(1)
      .reduce((bits, shift) => bits | (1 << (shift - 1)), 0);
    let states = 1;
    for (const { count } of kinds) {
      this.#radix.push(states);
      states *= count + 1;
    }
    const [xs, ys] = [endsOf(kinds, width, true), endsOf(kinds, height, false)];
    this.#tall = curvesOf(states, xs, ys);
    this.#wide = curvesOf(states, ys, xs);
    this.#alive = new Uint8Array(states);
    this.#wasted = new Float64Array(states);
    this.#firsts = new Int32Array(states);
    this.#packed = new Int32Array(this.#shifts === null ? 0 : states);
    this.#fill(states, width, height);
  }

  indexOf(counts: readonly number[]): number {
    return counts.reduce((index, count, kind) => index + count * this.#radix[kind]!, 0);
  }

  fits(index: number): boolean {
    return index === 0 || this.#alive[index] === 1;
  }

  #fill(states: number, width: number, height: number): void {
    const kinds = this.#kinds;
    const digits = kinds.map(() => 0);
    const areas = kinds.map((kind) => kind.width * kind.height);
    const counts = kinds.map(({ count }) => count);
    const steps = kinds.map((_, kind) => 1 << (this.#shifts?.[kind] ?? 0));
    const [tall, wide, firsts] = [this.#tall, this.#wide, this.#firsts];
    // What is known of the state at hand is carried along from the one before.
    let [pieces, area, bits, parts] = [0, 0, 0, 1];
    for (let state = 1; state < states; state++) {
      let kind = 0;
      while (digits[kind] === counts[kind]) {
        const count = digits[kind]!;
        pieces -= count;
        area -= count * areas[kind]!;
        bits -= count * steps[kind]!;
        parts /= count + 1;
        digits[kind++] = 0;
      }
      const count = ++digits[kind]!;
      pieces++;
      area += areas[kind]!;
      bits += steps[kind]!;
      parts = (parts / count) * (count + 1);
      if (state === this.#radix[kind]) this.#lastPiece = state;
      if (this.#shifts !== null) this.#packed[state] = bits;
      if (area > width * height) continue;
      if (pieces === 1) this.#place(state, kinds[kind]!);
      else {
        const ways = this.#splits(state, digits, parts);
        if (ways === 0) continue;
        const last = this.#lastPiece;
        const lowest = firstOver(tall.ends, area / height);
        const leftmost = firstOver(wide.ends, area / width);
        const across = joinParts(tall, state, firsts, ways, lowest, last);
        if (!joinParts(wide, state, firsts, ways, leftmost, last) && !across) continue;
      }
      this.#settle(state, area, pieces === 1);
    }
  }

  #place(state: number, { width, height, turn }: Kind): void {
    placePiece(this.#tall, state, width, height);
    if (turn) placePiece(this.#tall, state, height, width);
  }

  /** Lists all ways to part a selection in two, found by whichever way is the shorter; gives their number. */
  #splits(state: number, digits: readonly number[], ways: number): number {
    if (this.#single && this.#list.length > ways) return this.#splitsByBits(state);
    if (this.#shifts !== null && this.#list.length < 4 * ways) return this.#splitsByList(state);
    return this.#splitsByCount(state, digits);
  }

  #splitsByList(state: number): number {
    const [list, all, guards, alive] = [this.#list, this.#packed, this.#guards, this.#alive];
    const [firsts, wasted, waste] = [this.#firsts, this.#wasted, this.#waste];
    const whole = all[state]! | guards;
    let count = 0;
    for (const first of list) {
      if (2 * first > state) break;
      if (((whole - all[first]!) & guards) !== guards || alive[state - first] === 0) continue;
      if (wasted[first]! + wasted[state - first]! <= waste) firsts[count++] = first;
    }
    return count;
  }

  /** With one piece of every kind a selection is a number whose bits are its pieces. */
  #splitsByBits(state: number): number {
    const [firsts, alive, wasted, waste] = [this.#firsts, this.#alive, this.#wasted, this.#waste];
    const others = state ^ this.#lastPiece;
    let count = 0;
    for (let first = others; first > 0; first = (first - 1) & others) {
      const second = state - first;
      if (alive[first] === 0 || alive[second] === 0) continue;
      if (wasted[first]! + wasted[second]! <= waste) firsts[count++] = first;
    }
    return count;
  }

  #splitsByCount(state: number, digits: readonly number[]): number {
    const part = digits.map(() => 0);
    const [firsts, radix, alive] = [this.#firsts, this.#radix, this.#alive];
    let [first, count] = [0, 0];
    for (;;) {
      let kind = 0;
      while (part[kind] === digits[kind]) {
        first -= part[kind]! * radix[kind]!;
        part[kind++] = 0;
      }
      part[kind]!++;
      first += radix[kind]!;
      if (2 * first > state) return count;
      if (alive[first] === 1 && alive[state - first] === 1) firsts[count++] = first;
    }
  }

  /** Carries what is known by width over to heights and back, and notes whether anything is left. */
  #settle(state: number, area: number, single: boolean): void {
    const [tall, wide] = [this.#tall, this.#wide];
    keepAlone(tall, state);
    keepAlone(wide, state);
    carryOver(tall, state, wide);
    this.#wasted[state] = settleRow(tall, state, area, this.#waste);
    carryOver(wide, state, tall);
    if (settleRow(wide, state, area, this.#waste) === Infinity) return;
    if (!single) {
      noteSole(tall, state);
      noteSole(wide, state);
    }
    this.#alive[state] = 1;
    this.#list.push(state);
  }

  /** The cuts of a selection in a part of this width and height, found again by looking at the splits. */
  cutsIn(state: number, width: number, height: number): CutPlan {
    const digits = this.#digitsOf(state);
    const single = digits.indexOf(1);
    if (digits.reduce((sum, count) => sum + count, 0) === 1) {
      const kind = this.#kinds[single]!;
      return { kind: single, turned: kind.width > width || kind.height > height };
    }
    return this.#cutAcross(state, width, height) ?? this.#cutDown(state, width, height)!;
  }

  #cutAcross(state: number, width: number, height: number): CutPlan | null {
    const { ends: xs, least: tall } = this.#tall;
    const x = lastUpTo(xs, width);
    for (const first of this.#partsOf(state)) {
      const second = state - first;
      const [upper, lower] = [tall[first * xs.length + x]!, tall[second * xs.length + x]!];
      if (upper + lower > height) continue;
      return {
        way: 'horizontal',
        first: this.cutsIn(first, width, upper),
        second: this.cutsIn(second, width, height - upper),
      };
    }
    return null;
  }

  #cutDown(state: number, width: number, height: number): CutPlan | null {
    const { ends: ys, least: wide } = this.#wide;
    const y = lastUpTo(ys, height);
    for (const first of this.#partsOf(state)) {
      const second = state - first;
      const [left, right] = [wide[first * ys.length + y]!, wide[second * ys.length + y]!];
      if (left + right > width) continue;
      return {
        way: 'vertical',
        first: this.cutsIn(first, left, height),
        second: this.cutsIn(second, width - left, height),
      };
    }
    return null;
  }

  *#partsOf(state: number): Generator<number> {
    const digits = this.#digitsOf(state);
    for (let first = 1; first < state; first++) {
      const part = this.#digitsOf(first);
      if (part.every((count, kind) => count <= digits[kind]!)) yield first;
    }
  }

  #digitsOf(state: number): number[] {
    return this.#kinds.map(
      ({ count }, kind) => Math.floor(state / this.#radix[kind]!) % (count + 1),
    );
  }
}

/** Where each count starts when they are packed into 31 bits, and where they end; null when they do not fit. */
function shiftsOf(kinds: readonly Kind[]): number[] | null {
  const shifts = [0];
  for (const { count } of kinds) shifts.push(shifts.at(-1)! + Math.ceil(Math.log2(count + 1)) + 1);
  return shifts.at(-1)! <= 30 ? shifts : null;
}

/** Where sums of widths (or heights) of pieces end within the sheet, in rising order. */
function endsOf(kinds: readonly Kind[], limit: number, across: boolean): Uint16Array {
  const reached = new Uint8Array(limit + 1);
  reached[0] = 1;
  for (const { width, height, turn, count } of kinds) {
    const own = across ? width : height;
    const steps = turn ? [own, across ? height : width] : [own];
    for (let copy = 0; copy < count; copy++)
      for (let at = limit; at >= 0; at--)
        if (reached[at]) for (const step of steps) if (at + step <= limit) reached[at + step] = 1;
  }
  const ends: number[] = [];
  for (let at = 1; at <= limit; at++) if (reached[at]) ends.push(at);
  return Uint16Array.from(ends.length > 0 ? ends : [limit]);
}

/** The first entry of at least so much. */
function firstOver(ends: Uint16Array, least: number): number {
  let [low, high] = [0, ends.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ends[middle]! < least) low = middle + 1;
    else high = middle;
  }
  return low;
}

function lastUpTo(ends: Uint16Array, limit: number): number {
  let at = ends.length - 1;
  while (at > 0 && ends[at]! > limit) at--;
  return at;
}
