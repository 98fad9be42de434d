import type { Instance } from './instance.ts';
import { HAIR, worth } from './network/network.ts';
import type { Solution } from './network/network.ts';
import type { LaidOut } from './plan-cards.ts';

/**
 * The best choice of before, when more wishes leave it as it is: what is proven best among many is best among
 * fewer of them, so nothing is searched. Null when it is not proven, not possible any more, worth less, or when
 * the wishes allow anything that they did not before.
 */
export function stillBest(next: Instance, { instance, solution }: LaidOut): Solution | null {
  const { choice, value } = solution;
  if (choice === null || !solution.proven || !isNarrower(next, instance)) return null;
  if (!choice.every((design, slot) => next.network.allowed[slot]!.includes(design))) return null;
  const now = worth(next.network, choice);
  if (now < value - HAIR) return null;
  return {
    choice,
    value: now,
    bound: now,
    proven: true,
    best: [{ choice, value: now }],
    steps: 0,
  };
}

/** Whether every choice that is possible now was possible before, and worth no less. */
function isNarrower(now: Instance, before: Instance): boolean {
  const has = new Set(now.ask.pins.map((pin) => JSON.stringify(pin)));
  return (
    now.ask.scheme === before.ask.scheme &&
    JSON.stringify(now.ask.taste) === JSON.stringify(before.ask.taste) &&
    JSON.stringify(now.ask.up) === JSON.stringify(before.ask.up) &&
    before.ask.pins.every((pin) => has.has(JSON.stringify(pin))) &&
    now.network.allowed.every((designs, slot) =>
      designs.every((design) => before.network.allowed[slot]!.includes(design)),
    )
  );
}
