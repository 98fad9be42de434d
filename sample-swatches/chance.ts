/** A stream of numbers in [0, 1) that is the same for the same seed, on every machine. */
export type Chance = () => number;

/** Mulberry32, a published 32-bit generator (T. Ettinger, public domain): enough for drawing, not for secrets. */
export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A seed of its own for a part of something, so that changing one part leaves the others as they are. */
export function seedFor(seed: number, ...parts: readonly (string | number)[]): number {
  let hash = (2166136261 ^ seed) >>> 0;
  for (const letter of parts.join('/')) {
    hash = Math.imul(hash ^ letter.charCodeAt(0), 16777619) >>> 0;
  }
  return Math.imul(hash ^ (hash >>> 15), 2246822519) >>> 0;
}

export function between(chance: Chance, least: number, most: number): number {
  return least + (most - least) * chance();
}

export function oneOf<Item>(chance: Chance, items: readonly Item[]): Item {
  return items[Math.floor(chance() * items.length)]!;
}

export function shuffled<Item>(chance: Chance, items: readonly Item[]): Item[] {
  const order = [...items];
  for (let last = order.length - 1; last > 0; last--) {
    const other = Math.floor(chance() * (last + 1));
    [order[last], order[other]] = [order[other]!, order[last]!];
  }
  return order;
}

/** Normally distributed, mean 0 and spread 1 (Box and Muller 1958). */
export function normal(chance: Chance): number {
  return Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
}
