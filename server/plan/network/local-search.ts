import type { Pair, Relaxation, Triple } from './relaxation.ts';

/** A small generator of chance from a seed (mulberry32), in [0, 1). */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Random starts, and kicks of the best found: some slots laid anew at random. */
const STARTS = 16;
const KICKS = 48;
const KICKED = 3;
/** How many of the best are given. */
const GIVEN = 4;

/**
 * Good choices quickly, the best first: from given and random starts, and from kicks of the best so
 * far, single changes and exchanges of two slots as long as they help. Only the tables of the slots
 * that change are looked at. Choices are designs by open slot.
 */
export function goodChoices(
  relaxation: Relaxation,
  starts: readonly (readonly number[])[],
  random: () => number,
  until: () => boolean,
): number[][] {
  const { designs } = relaxation;
  const ground = groundOf(relaxation);
  const found: { places: Int32Array; worth: number }[] = [];
  const offer = (start: Int32Array | null): void => {
    if (start === null) return;
    const worth = climb(ground, start);
    if (found.some((one) => one.places.every((place, at) => place === start[at]))) return;
    found.push({ places: start, worth });
    found.sort((a, b) => b.worth - a.worth);
    found.length = Math.min(found.length, GIVEN);
  };
  for (const start of starts) offer(placed(designs, start));
  // Without any choice there is no plan to give, however late it is.
  for (let turn = 0; turn < STARTS && (found.length === 0 || !until()); turn++)
    offer(atRandom(ground, random, null));
  for (let turn = 0; turn < KICKS && found.length > 0 && !until(); turn++)
    offer(atRandom(ground, random, found[turn % Math.min(2, found.length)]!.places));
  return found.map(({ places }) => Array.from(places, (place, at) => designs[at]![place]!));
}

interface Ground {
  readonly relaxation: Relaxation;
  readonly pairsAt: readonly (readonly Pair[])[];
  readonly triplesAt: readonly (readonly Triple[])[];
  readonly placeOf: readonly Int32Array[];
}

function groundOf(relaxation: Relaxation): Ground {
  const { designs, pairs, triples, copies } = relaxation;
  return {
    relaxation,
    pairsAt: designs.map((_, at) => pairs.filter(({ a, b }) => a === at || b === at)),
    triplesAt: designs.map((_, at) =>
      triples.filter(({ a, b, c }) => a === at || b === at || c === at),
    ),
    placeOf: designs.map((list) => {
      const places = new Int32Array(copies.length).fill(-1);
      list.forEach((design, place) => (places[design] = place));
      return places;
    }),
  };
}

function placed(designs: readonly Int32Array[], choice: readonly number[]): Int32Array | null {
  const places = Int32Array.from(choice, (design, at) => designs[at]!.indexOf(design));
  return places.includes(-1) ? null : places;
}

/** A random choice within the copies, the slots with fewest designs first; null when it ran out. */
function atRandom(
  { relaxation, placeOf }: Ground,
  random: () => number,
  kicked: Int32Array | null,
): Int32Array | null {
  const { designs } = relaxation;
  const left = relaxation.copies.slice();
  const places = kicked?.slice() ?? new Int32Array(designs.length).fill(-1);
  if (kicked !== null)
    for (let kick = 0; kick < KICKED; kick++) places[Math.floor(random() * places.length)] = -1;
  places.forEach((place, at) => {
    if (place >= 0) left[designs[at]![place]!]!--;
  });
  const order = designs
    .map((list, at) => ({ at, tight: list.length + random() }))
    .filter(({ at }) => places[at] === -1)
    .sort((a, b) => a.tight - b.tight);
  for (const { at } of order) {
    const free = designs[at]!.filter((design) => left[design]! > 0);
    if (free.length === 0) return null;
    const design = free[Math.floor(random() * free.length)]!;
    places[at] = placeOf[at]![design]!;
    left[design]!--;
  }
  return places;
}

/** Changes `places` for the better until nothing helps; gives its worth. */
function climb(ground: Ground, places: Int32Array): number {
  const { relaxation, placeOf } = ground;
  const { designs, copies } = relaxation;
  const left = copies.slice();
  places.forEach((place, at) => left[designs[at]![place]!]!--);
  for (let better = true; better;) {
    better = false;
    for (let at = 0; at < places.length; at++) {
      better = changeAlone(ground, places, left, at) || better;
      for (let other = at + 1; other < places.length; other++) {
        const [mine, theirs] = [places[at]!, places[other]!];
        const given = placeOf[at]![designs[other]![theirs]!]!;
        const taken = placeOf[other]![designs[at]![mine]!]!;
        if (given < 0 || taken < 0 || given === mine) continue;
        const before = worthAround(ground, places, at, other);
        places[at] = given;
        places[other] = taken;
        if (worthAround(ground, places, at, other) > before + 1e-12) better = true;
        else {
          places[at] = mine;
          places[other] = theirs;
        }
      }
    }
  }
  return wholeWorth(relaxation, places);
}

/** Gives one slot its best design beside the others. */
function changeAlone(ground: Ground, places: Int32Array, left: Int32Array, at: number): boolean {
  const list = ground.relaxation.designs[at]!;
  const old = places[at]!;
  const row = rowOf(ground, places, at);
  let best = old;
  for (let place = 0; place < row.length; place++)
    if (row[place]! > row[best]! + 1e-12 && left[list[place]!]! > 0) best = place;
  if (best === old) return false;
  left[list[old]!]!++;
  left[list[best]!]!--;
  places[at] = best;
  return true;
}

/** What each design of a slot is worth beside the others as they stand. */
function rowOf(
  { relaxation, pairsAt, triplesAt }: Ground,
  places: Int32Array,
  at: number,
): Float64Array {
  const { designs, unary } = relaxation;
  const row = unary[at]!.slice();
  for (const { a, b, data } of pairsAt[at]!) {
    const width = designs[b]!.length;
    const [begin, step] = a === at ? [places[b]!, width] : [places[a]! * width, 1];
    for (let place = 0, cell = begin; place < row.length; place++, cell += step)
      row[place]! += data[cell]!;
  }
  for (const { a, b, c, data } of triplesAt[at]!) {
    const width = designs[c]!.length;
    const block = designs[b]!.length * width;
    const whole = places[a]! * block + places[b]! * width + places[c]!;
    const step = a === at ? block : b === at ? width : 1;
    for (
      let place = 0, cell = whole - places[at]! * step;
      place < row.length;
      place++, cell += step
    )
      row[place]! += data[cell]!;
  }
  return row;
}

/** What the tables that touch one of two slots are worth. */
function worthAround(
  { relaxation, pairsAt, triplesAt }: Ground,
  places: Int32Array,
  at: number,
  other: number,
): number {
  const { unary } = relaxation;
  let sum = unary[at]![places[at]!]! + unary[other]![places[other]!]!;
  for (const pair of pairsAt[at]!) sum += worthOfPair(relaxation, pair, places);
  for (const triple of triplesAt[at]!) sum += worthOfTriple(relaxation, triple, places);
  for (const pair of pairsAt[other]!)
    if (pair.a !== at && pair.b !== at) sum += worthOfPair(relaxation, pair, places);
  for (const triple of triplesAt[other]!)
    if (triple.a !== at && triple.b !== at && triple.c !== at)
      sum += worthOfTriple(relaxation, triple, places);
  return sum;
}

function wholeWorth(relaxation: Relaxation, places: Int32Array): number {
  let sum = relaxation.constant;
  relaxation.unary.forEach((row, at) => (sum += row[places[at]!]!));
  for (const pair of relaxation.pairs) sum += worthOfPair(relaxation, pair, places);
  for (const triple of relaxation.triples) sum += worthOfTriple(relaxation, triple, places);
  return sum;
}

function worthOfPair({ designs }: Relaxation, { a, b, data }: Pair, places: Int32Array): number {
  return data[places[a]! * designs[b]!.length + places[b]!]!;
}

function worthOfTriple(
  { designs }: Relaxation,
  { a, b, c, data }: Triple,
  places: Int32Array,
): number {
  const row = places[a]! * designs[b]!.length + places[b]!;
  return data[row * designs[c]!.length + places[c]!]!;
}
