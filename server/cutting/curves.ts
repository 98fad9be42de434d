/**
 * For every selection of pieces the least height it needs at each width (or, in another table, the least
 * width at each height), as far as it fits the sheet at all.
 */
export interface Curves {
  /** Where sums of widths (or heights) of pieces end, in rising order. */
  readonly ends: Uint16Array;
  /** The most height (or width) that any sum of pieces reaches on the sheet. */
  readonly most: number;
  /** A row of as many entries a selection; `NEVER` where it has no room. */
  readonly least: Uint16Array;
  /** The first entry at which a selection has room on the sheet. */
  readonly from: Uint16Array;
  /** The last entry at which it gets by with less than at the one before. */
  readonly to: Uint16Array;
  /** From where to where it gets by with less than as parts in one row of this table. */
  readonly soleFrom: Uint16Array;
  readonly soleTo: Uint16Array;
  /** One row, as it stood before anything was carried over. */
  readonly alone: Uint16Array;
}

/** Above any height on the grid; twice as much still fits in 16 bits. */
export const NEVER = 30_000;

export function curvesOf(states: number, ends: Uint16Array, others: Uint16Array): Curves {
  return {
    ends,
    most: others.at(-1)!,
    least: new Uint16Array(states * ends.length).fill(NEVER),
    from: new Uint16Array(states),
    to: new Uint16Array(states),
    soleFrom: new Uint16Array(states),
    soleTo: new Uint16Array(states).fill(ends.length - 1),
    alone: new Uint16Array(ends.length),
  };
}

/** A single piece: at every end from its own on it needs its other side. */
export function placePiece(
  { ends, least }: Curves,
  state: number,
  along: number,
  other: number,
): void {
  for (let at = 0; at < ends.length; at++) {
    const entry = state * ends.length + at;
    if (ends[at]! >= along && other < least[entry]!) least[entry] = other;
  }
}

/**
 * A selection as two parts in a row, least[state] = min(least[first] + least[state - first]), for every way
 * of parting it that is listed, entry by entry.
 *
 * Takes  `lowest`, the first entry at which the selection has the area it needs, and `lastPiece`, the least
 *        selection that holds a piece of its last kind. Of three and more in a row the one with the last
 *        piece is taken off, which is then no such row itself: elsewhere nothing is gained by it.
 * Gives  whether the selection has room anywhere as two of these parts.
 */
export function joinParts(
  { ends, least, from, to, soleFrom, soleTo }: Curves,
  state: number,
  firsts: Int32Array,
  count: number,
  lowest: number,
  lastPiece: number,
): boolean {
  const length = ends.length;
  const own = state * length;
  let found = false;
  for (let index = 0; index < count; index++) {
    const first = firsts[index]!;
    const second = state - first;
    let start = from[first]! > from[second]! ? from[first]! : from[second]!;
    let end = to[first]! > to[second]! ? to[first]! : to[second]!;
    if (start < lowest) start = lowest;
    if (first < lastPiece) {
      if (start < soleFrom[second]!) start = soleFrom[second]!;
      if (end > soleTo[second]!) end = soleTo[second]!;
    }
    const a = first * length;
    const b = second * length;
    for (let at = start; at <= end; at++) {
      const sum = least[a + at]! + least[b + at]!;
      if (sum < least[own + at]!) {
        least[own + at] = sum;
        found = true;
      }
    }
  }
  return found;
}

/** Keeps a row aside as it stands, each entry at most the one before. */
export function keepAlone({ ends, least, alone }: Curves, state: number): void {
  const row = state * ends.length;
  let low = NEVER;
  for (let at = 0; at < ends.length; at++) {
    if (least[row + at]! < low) low = least[row + at]!;
    alone[at] = low;
  }
}

/** Carries what another table knows of a selection over to this one. */
export function carryOver(
  { ends, least }: Curves,
  state: number,
  { ends: others, least: known }: Curves,
): void {
  const [row, column] = [state * ends.length, state * others.length];
  for (let y = 0, x = ends.length - 1; y < others.length; y++)
    while (x >= 0 && ends[x]! >= known[column + y]!) {
      if (others[y]! < least[row + x]!) least[row + x] = others[y]!;
      x--;
    }
}

/**
 * Keeps of a row only what wastes no more than is allowed, each entry at most the one before. Gives the
 * least that is wasted anywhere; Infinity when nothing is left.
 */
export function settleRow(
  { ends, most, least, from, to }: Curves,
  state: number,
  area: number,
  waste: number,
): number {
  const row = state * ends.length;
  let [low, wasted, first] = [most + 1, Infinity, -1];
  for (let at = 0; at < ends.length; at++) {
    const side = least[row + at]!;
    const lost = ends[at]! * side - area;
    if (side < low && lost <= waste) {
      low = side;
      to[state] = at;
      if (first < 0) first = at;
      if (lost < wasted) wasted = lost;
    }
    least[row + at] = low > most ? NEVER : low;
  }
  from[state] = Math.max(0, first);
  return wasted;
}

/** Notes where a row got lower than it stood alone, before anything was carried over. */
export function noteSole({ ends, least, soleFrom, soleTo, alone }: Curves, state: number): void {
  const row = state * ends.length;
  let first = 0;
  while (first < ends.length && least[row + first]! >= alone[first]!) first++;
  let last = ends.length - 1;
  while (last > first && least[row + last]! >= alone[last]!) last--;
  soleFrom[state] = first;
  soleTo[state] = last;
}
