import { busy } from './busy.ts';
import { chance } from '../../server/plan/network/local-search.ts';
import { valueAt } from '../../server/plan/network/factor.ts';
import { worth } from '../../server/plan/network/network.ts';
import type { Network } from '../../server/plan/network/network.ts';

/** Slots in turn, each with the design that adds most beside those already laid. */
export function greedy(network: Network): number {
  const left = [...network.copies];
  const choice: number[] = [];
  const first = network.copies.map((_, design) => design);
  for (let slot = 0; slot < network.allowed.length; slot++) {
    let best = -1;
    let most = -Infinity;
    for (const design of network.allowed[slot]!) {
      if (left[design] === 0) continue;
      const rest = network.allowed.slice(slot + 1).map((_, later) => first[later]!);
      const value = laid(network, [...choice, design, ...rest], slot);
      if (value > most) {
        most = value;
        best = design;
      }
    }
    choice.push(best);
    left[best]!--;
  }
  return worth(network, choice);
}

/** The worth of the cards whose slots are all laid. */
function laid(network: Network, choice: readonly number[], last: number): number {
  return worth(
    {
      ...network,
      factors: network.factors.filter(({ scope }) => scope.every((slot) => slot <= last)),
      wides: network.wides.filter(({ scope }) => scope.every((slot) => slot <= last)),
    },
    choice,
  );
}

/** Simulated annealing by single changes and exchanges for so much processor time. */
export function annealed(network: Network, seed: number, milliseconds: number): number {
  const random = chance(seed);
  const begin = busy();
  const used = network.copies.map(() => 0);
  const choice = network.allowed.map((designs) => {
    const design = designs.find((one) => used[one]! < network.copies[one]!)!;
    used[design]!++;
    return design;
  });
  const around = aroundOf(network);
  let value = worth(network, choice);
  let best = value;
  let part = 0;
  for (let turn = 0; part < 1; turn++) {
    if (turn % 32 === 0) part = (busy() - begin) / milliseconds;
    const heat = 0.2 * Math.max(0.001, 1 - part) ** 2;
    const slot = Math.floor(random() * choice.length);
    const other = Math.floor(random() * choice.length);
    const old = choice[slot]!;
    const exchange = random() < 0.3 && other !== slot;
    const fresh = exchange
      ? choice[other]!
      : network.allowed[slot]![Math.floor(random() * network.allowed[slot]!.length)]!;
    if (fresh === old || (!exchange && used[fresh]! >= network.copies[fresh]!)) continue;
    const touched = exchange ? [slot, other] : [slot];
    const before = around(choice, touched);
    choice[slot] = fresh;
    if (exchange) choice[other] = old;
    const gain = around(choice, touched) - before;
    if (gain >= 0 || random() < Math.exp(gain / heat)) {
      value += gain;
      best = Math.max(best, value);
      if (!exchange) {
        used[old]!--;
        used[fresh]!++;
      }
    } else {
      choice[slot] = old;
      if (exchange) choice[other] = fresh;
    }
  }
  return best;
}

/** The worth of the cards that are cut from some of these slots. */
function aroundOf(
  network: Network,
): (choice: readonly number[], slots: readonly number[]) => number {
  return (choice, slots) => {
    const touched = (scope: readonly number[]): boolean =>
      scope.some((slot) => slots.includes(slot));
    let sum = 0;
    for (const factor of network.factors) if (touched(factor.scope)) sum += valueAt(factor, choice);
    for (const wide of network.wides) if (touched(wide.scope)) sum += wide.at(choice);
    return sum;
  };
}
