import type { Relaxation } from './relaxation.ts';
import { add, createBook, nothing, picked } from './table-book.ts';

/**
 * The relaxation with slot `at` settled on the design at `place`, and the other slots cut down to
 * `kept`: places in their lists of designs (the list of `at` itself plays no part).
 */
export function settle(
  whole: Relaxation,
  at: number,
  place: number,
  kept: readonly Int32Array[],
): Relaxation {
  const chosen = kept.map((list, slot) => (slot === at ? Int32Array.of(place) : list));
  const design = whole.designs[at]![place]!;
  const renamed = (slot: number): number => (slot > at ? slot - 1 : slot);
  const others = <T>(list: readonly T[]): T[] => list.filter((_, slot) => slot !== at);
  const cut = cutDown(whole, chosen);
  const unary = others(cut.unary);
  const designs = others(cut.designs);
  const book = createBook(designs);
  for (const { a, b, data } of cut.pairs) {
    if (a === at) add(unary[renamed(b)]!, data);
    else if (b === at) add(unary[a]!, data);
    else add(book.pair(renamed(a), renamed(b)), data);
  }
  for (const { a, b, c, data } of cut.triples) {
    if (a === at) add(book.pair(renamed(b), renamed(c)), data);
    else if (b === at) add(book.pair(a, renamed(c)), data);
    else if (c === at) add(book.pair(a, b), data);
    else book.take(renamed(a), renamed(b), renamed(c), data);
  }
  const copies = whole.copies.slice();
  copies[design]!--;
  const settled = whole.settled.slice();
  settled[whole.slots[at]!] = design;
  return {
    slots: others(whole.slots),
    designs,
    unary,
    ...book.close(),
    constant: whole.constant + whole.unary[at]![place]!,
    prices: whole.prices.slice(),
    copies,
    settled,
  };
}

/** The relaxation with each slot cut down to these places in its list; what was passed on is taken off. */
export function cutDown(whole: Relaxation, kept: readonly Int32Array[]): Relaxation {
  const sizes = whole.designs.map((list) => list.length);
  const data = (members: readonly number[], from: Float64Array): Float64Array =>
    picked(
      from,
      members.map((member) => sizes[member]!),
      members.map((member) => kept[member]!),
    );
  return {
    ...whole,
    designs: whole.designs.map((list, at) => kept[at]!.map((place) => list[place]!)),
    unary: whole.unary.map((row, at) => Float64Array.from(kept[at]!, (place) => row[place]!)),
    pairs: whole.pairs.map(({ a, b, data: from }) => ({ a, b, data: data([a, b], from) })),
    triples: whole.triples.map((triple) => {
      const { a, b, c, sides } = triple;
      const [ab, ac, bc] = triple.passed;
      const out = data([a, b, c], triple.data);
      takeOff(out, data([a, b], ab), data([a, c], ac), data([b, c], bc), kept[c]!.length);
      return { a, b, c, sides, data: out, passed: nothing(kept, a, b, c) };
    }),
  };
}

/** Takes what the triples have passed on off their tables, so that these can be read as they are. */
export function writtenOut(whole: Relaxation): Relaxation {
  for (const triple of whole.triples) {
    const [ab, ac, bc] = triple.passed;
    takeOff(triple.data, ab, ac, bc, whole.designs[triple.c]!.length);
    for (const table of triple.passed) table.fill(0);
  }
  return whole;
}

function takeOff(
  data: Float64Array,
  ab: Float64Array,
  ac: Float64Array,
  bc: Float64Array,
  width: number,
): void {
  const rows = bc.length / width;
  for (let row = 0, cell = 0; row < ab.length; row++) {
    const first = ab[row]!;
    const left = Math.floor(row / rows) * width;
    const right = (row % rows) * width;
    for (let place = 0; place < width; place++, cell++)
      data[cell]! -= first + ac[left + place]! + bc[right + place]!;
  }
}
