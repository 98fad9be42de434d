/** A size of piece in whole grid steps, and how many of it there are. */
export interface Kind {
  readonly width: number;
  readonly height: number;
  /** Whether it may lie turned. */
  readonly turn: boolean;
  readonly count: number;
}

/** How pieces come out of a part by edge-to-edge cuts; `kind` is an index into the kinds. */
export type CutPlan =
  | { readonly kind: number; readonly turned: boolean }
  | { readonly way: 'vertical' | 'horizontal'; readonly first: CutPlan; readonly second: CutPlan };

/** Which sets of pieces can be cut from one sheet, edge to edge. */
export interface Packings {
  /** Whether so many of each kind can be cut from one sheet. Exact. */
  readonly fits: (counts: readonly number[]) => boolean;
  /** The cuts for it, or null when it does not fit. */
  readonly cuts: (counts: readonly number[]) => CutPlan | null;
}

/** Above any height on the grid; twice as much still fits in 16 bits. */
const NEVER = 30_000;

/**
 * Settles for every selection of the pieces whether edge-to-edge cuts can bring it out of one sheet.
 *
 * Takes     kinds of pieces and a sheet in whole grid steps (a sheet of at most 15,000 steps a side).
 * Gives     exact answers, for any number of stages of cuts, with turning where a kind allows it.
 * How       for every selection S and every width w it keeps the least height h(S, w) into which S can
 *           be cut, and for every height the least width. A selection is one piece, or two selections
 *           one above the other, h(A, w) + h(B, w), or side by side, likewise in the heights:
 *
 *               ┌──────┐         ┌───┬───┐
 *               │  A   │         │ A │ B │
 *               ├──────┤   or    │   │   │
 *               │  B   │         └───┴───┘
 *               └──────┘
 *
 *           Widths and heights are taken only where sums of pieces end (normal patterns: Herz 1972;
 *           Christofides, Whitlock 1977).
 *           With `waste`, parts that waste more than that inside them are dropped (Wang 1983, Oper.
 *           Res. 31, 573-586): then only selections that leave at most so much of the sheet unused
 *           are answered, and those many times faster.
 * Good up to about twelve different pieces; equal ones count once with their number (`workOf`).
 */
export function packingsOf(
  kinds: readonly Kind[],
  width: number,
  height: number,
  waste = Infinity,
): Packings {
  const table = new Table(kinds, width, height, waste);
  return {
    fits: (counts) => table.fits(table.indexOf(counts)),
    cuts: (counts) => {
      const index = table.indexOf(counts);
      return table.fits(index) ? table.cutsIn(index, width, height) : null;
    },
  };
}

/** How many pairs of selections `packingsOf` looks at: some tens of thousands take a millisecond or two. */
export function workOf(kinds: readonly Kind[]): number {
  return kinds.reduce((work, { count }) => (work * (count + 1) * (count + 2)) / 2, 1);
}

class Table {
  readonly #kinds: readonly Kind[];
  readonly #radix: number[] = [];
  readonly #xs: Uint16Array;
  readonly #ys: Uint16Array;
  /** Row a selection: least height at every width of xs, and least width at every height of ys. */
  readonly #tall: Uint16Array;
  readonly #wide: Uint16Array;
  /** The first width, and height, at which a selection has room on the sheet at all. */
  readonly #fromX: Uint16Array;
  readonly #fromY: Uint16Array;
  readonly #alive: Uint8Array;
  readonly #waste: number;
  /** Selections that can be cut, in rising order. */
  readonly #list: number[] = [];
  /** Counts of a selection side by side in bits, each with a guard bit above; -1 when they do not fit. */
  readonly #packed: Int32Array;
  readonly #shifts: readonly number[] | null;
  readonly #guards: number;

  constructor(kinds: readonly Kind[], width: number, height: number, waste: number) {
    this.#kinds = kinds;
    this.#waste = waste;
    this.#shifts = shiftsOf(kinds);
    this.#guards = (this.#shifts ?? [])
      .slice(1)
      .reduce((bits, shift) => bits | (1 << (shift - 1)), 0);
    let states = 1;
    for (const { count } of kinds) {
      this.#radix.push(states);
      states *= count + 1;
    }
    this.#xs = endsOf(kinds, width, true);
    this.#ys = endsOf(kinds, height, false);
    this.#tall = new Uint16Array(states * this.#xs.length).fill(NEVER);
    this.#wide = new Uint16Array(states * this.#ys.length).fill(NEVER);
    this.#fromX = new Uint16Array(states);
    this.#fromY = new Uint16Array(states);
    this.#alive = new Uint8Array(states);
    this.#packed = new Int32Array(this.#shifts === null ? 0 : states);
    this.#fill(states, width * height);
  }

  indexOf(counts: readonly number[]): number {
    return counts.reduce((index, count, kind) => index + count * this.#radix[kind]!, 0);
  }

  fits(index: number): boolean {
    return index === 0 || this.#alive[index] === 1;
  }

  #fill(states: number, sheetArea: number): void {
    const digits = this.#kinds.map(() => 0);
    for (let state = 1; state < states; state++) {
      let kind = 0;
      while (digits[kind] === this.#kinds[kind]!.count) digits[kind++] = 0;
      digits[kind]!++;
      const pieces = digits.reduce((sum, count) => sum + count, 0);
      const area = digits.reduce(
        (sum, count, at) => sum + count * this.#kinds[at]!.width * this.#kinds[at]!.height,
        0,
      );
      if (this.#shifts !== null) this.#packed[state] = packed(digits, this.#shifts);
      if (area > sheetArea) continue;
      if (pieces === 1) this.#single(state, this.#kinds[digits.indexOf(1)]!);
      else this.#splits(state, digits);
      this.#settle(state, area);
    }
  }

  #single(state: number, { width, height, turn }: Kind): void {
    this.#place(state, width, height);
    if (turn) this.#place(state, height, width);
  }

  #place(state: number, width: number, height: number): void {
    const [xs, ys] = [this.#xs, this.#ys];
    if (height > ys.at(-1)!) return;
    for (let x = 0; x < xs.length; x++) {
      const at = state * xs.length + x;
      if (xs[x]! >= width && height < this.#tall[at]!) this.#tall[at] = height;
    }
  }

  /** Goes through all ways to part a selection in two, by whichever list is the shorter. */
  #splits(state: number, digits: readonly number[]): void {
    const ways = digits.reduce((product, count) => product * (count + 1), 1);
    if (this.#shifts !== null && this.#list.length < 4 * ways) this.#splitsByList(state);
    else this.#splitsByCount(state, digits);
  }

  #splitsByList(state: number): void {
    const [list, all, guards, alive] = [this.#list, this.#packed, this.#guards, this.#alive];
    const whole = all[state]! | guards;
    for (const first of list) {
      if (2 * first > state) return;
      if (((whole - all[first]!) & guards) === guards && alive[state - first])
        this.#join(state, first);
    }
  }

  #splitsByCount(state: number, digits: readonly number[]): void {
    const part = digits.map(() => 0);
    let first = 0;
    for (;;) {
      let kind = 0;
      while (part[kind] === digits[kind]) {
        first -= part[kind]! * this.#radix[kind]!;
        part[kind++] = 0;
      }
      part[kind]!++;
      first += this.#radix[kind]!;
      if (2 * first > state) return;
      if (this.#alive[first] && this.#alive[state - first]) this.#join(state, first);
    }
  }

  #join(state: number, first: number): void {
    const second = state - first;
    const [fromX, fromY] = [this.#fromX, this.#fromY];
    join(
      this.#tall,
      this.#xs.length,
      state,
      first,
      second,
      Math.max(fromX[first]!, fromX[second]!),
    );
    join(
      this.#wide,
      this.#ys.length,
      state,
      first,
      second,
      Math.max(fromY[first]!, fromY[second]!),
    );
  }

  /** Carries what is known by width over to heights and back, and notes whether anything is left. */
  #settle(state: number, area: number): void {
    const [xs, ys, tall, wide] = [this.#xs, this.#ys, this.#tall, this.#wide];
    const [row, column] = [state * xs.length, state * ys.length];
    for (let y = 0, x = xs.length - 1; y < ys.length; y++) {
      while (x >= 0 && xs[x]! >= wide[column + y]!) {
        if (ys[y]! < tall[row + x]!) tall[row + x] = ys[y]!;
        x--;
      }
    }
    let least = NEVER;
    for (let x = 0; x < xs.length; x++) {
      const height = tall[row + x]!;
      if (height < least && xs[x]! * height - area <= this.#waste) least = height;
      tall[row + x] = least;
    }
    wide.fill(NEVER, column, column + ys.length);
    for (let x = 0, y = ys.length - 1; x < xs.length; x++) {
      while (y >= 0 && ys[y]! >= tall[row + x]!) wide[column + y--] = xs[x]!;
    }
    const highest = ys.at(-1)!;
    if (least > highest) return;
    let x = 0;
    while (tall[row + x]! > highest) x++;
    this.#fromX[state] = x;
    let y = 0;
    while (wide[column + y] === NEVER) y++;
    this.#fromY[state] = y;
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
    const [xs, tall] = [this.#xs, this.#tall];
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
    const [ys, wide] = [this.#ys, this.#wide];
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

function packed(digits: readonly number[], shifts: readonly number[]): number {
  return digits.reduce((bits, count, kind) => bits | (count << shifts[kind]!), 0);
}

/** table[state] = min(table[state], table[first] + table[second]), entry by entry from one on. */
function join(
  table: Uint16Array,
  length: number,
  state: number,
  first: number,
  second: number,
  from: number,
): void {
  const [to, a, b] = [state * length, first * length, second * length];
  for (let at = from; at < length; at++) {
    const sum = table[a + at]! + table[b + at]!;
    if (sum < table[to + at]!) table[to + at] = sum;
  }
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

function lastUpTo(ends: Uint16Array, limit: number): number {
  let at = ends.length - 1;
  while (at > 0 && ends[at]! > limit) at--;
  return at;
}
