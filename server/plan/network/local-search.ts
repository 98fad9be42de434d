import { worth } from './network.ts';
import type { Network } from './network.ts';

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

/**
 * A good choice quickly: from several starts, single changes and exchanges of two slots as long as
 * they help.
 */
export function localSearch(
  network: Network,
  starts: readonly (readonly number[])[],
): { readonly choice: number[]; readonly value: number } | null {
  let best: { choice: number[]; value: number } | null = null;
  for (const start of starts) {
    const found = climb(network, [...start]);
    if (best === null || found.value > best.value) best = found;
  }
  return best;
}

/** A random choice within the copies; null when this draw ran out of designs. */
export function randomChoice(network: Network, random: () => number): number[] | null {
  const left = [...network.copies];
  const order = network.allowed
    .map((designs, slot) => ({ slot, tight: designs.length + random() }))
    .sort((a, b) => a.tight - b.tight);
  const choice = new Array<number>(network.allowed.length).fill(-1);
  for (const { slot } of order) {
    const free = network.allowed[slot]!.filter((design) => left[design]! > 0);
    if (free.length === 0) return null;
    const design = free[Math.floor(random() * free.length)]!;
    choice[slot] = design;
    left[design]!--;
  }
  return choice;
}

/** All choices that differ from this one in one slot, or by exchanging two. */
export function changes(network: Network, choice: readonly number[]): number[][] {
  const used = network.copies.map((_, design) => choice.filter((one) => one === design).length);
  const singles = choice.flatMap((old, slot) =>
    network.allowed[slot]!.filter(
      (design) => design !== old && used[design]! < network.copies[design]!,
    ).map((design) => choice.map((one, at) => (at === slot ? design : one))),
  );
  const exchanges = choice.flatMap((a, slot) =>
    choice.flatMap((b, other) =>
      other > slot &&
      a !== b &&
      network.allowed[slot]!.includes(b) &&
      network.allowed[other]!.includes(a)
        ? [choice.map((one, at) => (at === slot ? b : at === other ? a : one))]
        : [],
    ),
  );
  return [...singles, ...exchanges];
}

function climb(network: Network, choice: number[]): { choice: number[]; value: number } {
  const may = network.allowed.map((designs) => new Set(designs));
  const used = new Array<number>(network.copies.length).fill(0);
  for (const design of choice) used[design]!++;
  let value = worth(network, choice);
  for (let better = true; better;) {
    better = false;
    for (let slot = 0; slot < choice.length; slot++) {
      for (const design of network.allowed[slot]!) {
        const old = choice[slot]!;
        if (design === old || used[design]! >= network.copies[design]!) continue;
        choice[slot] = design;
        const now = worth(network, choice);
        if (now > value + 1e-12) {
          used[old]!--;
          used[design]!++;
          value = now;
          better = true;
        } else choice[slot] = old;
      }
      for (let other = slot + 1; other < choice.length; other++) {
        const [a, b] = [choice[slot]!, choice[other]!];
        if (a === b || !may[slot]!.has(b) || !may[other]!.has(a)) continue;
        choice[slot] = b;
        choice[other] = a;
        const now = worth(network, choice);
        if (now > value + 1e-12) {
          value = now;
          better = true;
        } else {
          choice[slot] = a;
          choice[other] = b;
        }
      }
    }
  }
  return { choice, value };
}
