import { valueAt } from './factor.ts';
import type { Network } from './network.ts';

/** Slots that are laid anew at a kick. */
const KICKED = 3;

export interface Polisher {
  /** Single changes and exchanges of two slots as long as they help, by the true worth of all cards. */
  polish(choice: readonly number[]): number[];
  /** The choice with some slots laid anew at random, then polished; as it was when no design is left. */
  kick(choice: readonly number[], random: () => number): number[];
}

export function createPolisher(network: Network): Polisher {
  const may = network.allowed.map((designs) => new Set(designs));
  const touching = touchingOf(network);
  const polish = (start: readonly number[]): number[] => climb(network, may, touching, [...start]);
  return {
    polish,
    kick(choice, random) {
      const kicked = [...choice];
      const slots = new Set<number>();
      while (slots.size < Math.min(KICKED, choice.length))
        slots.add(Math.floor(random() * choice.length));
      const left = [...network.copies];
      choice.forEach((design, slot) => {
        if (!slots.has(slot)) left[design]!--;
      });
      for (const slot of slots) {
        const free = network.allowed[slot]!.filter((design) => left[design]! > 0);
        if (free.length === 0) return [...choice];
        const design = free[Math.floor(random() * free.length)]!;
        kicked[slot] = design;
        left[design]!--;
      }
      return polish(kicked);
    },
  };
}

interface Table {
  readonly scope: readonly number[];
  at(choice: ArrayLike<number>): number;
}

/** The cards that are cut from each slot. */
function touchingOf(network: Network): Table[][] {
  const tables: Table[] = [
    ...network.factors.map((factor) => ({
      scope: factor.scope,
      at: (choice: ArrayLike<number>) => valueAt(factor, choice),
    })),
    ...network.wides,
  ];
  return network.allowed.map((_, slot) => tables.filter(({ scope }) => scope.includes(slot)));
}

function climb(
  network: Network,
  may: readonly ReadonlySet<number>[],
  touching: readonly (readonly Table[])[],
  choice: number[],
): number[] {
  const used = network.copies.map(() => 0);
  for (const design of choice) used[design]!++;
  const around = (slot: number): number =>
    touching[slot]!.reduce((sum, table) => sum + table.at(choice), 0);
  const aroundBoth = (slot: number, other: number): number =>
    touching[other]!.reduce(
      (sum, table) => (table.scope.includes(slot) ? sum : sum + table.at(choice)),
      around(slot),
    );
  const change = (slot: number): boolean => {
    const old = choice[slot]!;
    let best = old;
    let most = around(slot) + 1e-12;
    for (const design of network.allowed[slot]!) {
      if (design === old || used[design]! >= network.copies[design]!) continue;
      choice[slot] = design;
      const now = around(slot);
      if (now <= most) continue;
      most = now + 1e-12;
      best = design;
    }
    choice[slot] = best;
    used[old]!--;
    used[best]!++;
    return best !== old;
  };
  const exchange = (slot: number, other: number): boolean => {
    const [a, b] = [choice[slot]!, choice[other]!];
    if (a === b || !may[slot]!.has(b) || !may[other]!.has(a)) return false;
    const before = aroundBoth(slot, other);
    choice[slot] = b;
    choice[other] = a;
    if (aroundBoth(slot, other) > before + 1e-12) return true;
    choice[slot] = a;
    choice[other] = b;
    return false;
  };
  for (let better = true; better;) {
    better = false;
    for (let slot = 0; slot < choice.length; slot++) {
      better = change(slot) || better;
      for (let other = slot + 1; other < choice.length; other++)
        better = exchange(slot, other) || better;
    }
  }
  return choice;
}
