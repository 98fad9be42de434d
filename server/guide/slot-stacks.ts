import { stacksOf } from '../cutting/stacks.ts';
import type { GuideAsk } from './ask.ts';
import type { Facts, SlotFacts } from './facts.ts';
import { isSpared } from './parts-words.ts';
import { labelsSaid } from './said.ts';

/** Most sheets of patterned paper under the blade at once: common practice, no source. */
const STACK = 3;

/**
 * The sheets in the order of cutting, stack by stack: by their numbers, and what is cut alike follows the first of
 * its stack. One that stays whole lies in no stack.
 */
export function slotStacks(ask: GuideAsk, { slots }: Facts): SlotFacts[][] {
  const cut = slots.map(({ slot }) => slot).filter((slot) => !isSpared(ask, slot));
  const stacks = stacksOf({ ...ask.scheme, slots: cut }, ask.stack ?? STACK);
  const stackOf = (id: string): readonly string[] =>
    stacks.find((stack) => stack.slots.includes(id))?.slots ?? [id];
  return slots.flatMap(({ slot }) => {
    const ids = stackOf(slot.id);
    const stack = slots.filter((one) => ids.includes(one.slot.id));
    return stack[0]?.slot.id === slot.id ? [stack] : [];
  });
}

/** Which other sheets are cut alike, and that they follow each other whatever their numbers. */
export function stackNote(ask: GuideAsk, facts: Facts, one: SlotFacts): string {
  const others = stackOf(ask, facts, one).filter(({ slot }) => slot.id !== one.slot.id);
  if (others.length === 0) return '';
  return `Cut alike: ${labelsSaid(others.map(({ name }) => name))}. They follow each other, so that you may lay them on each other and cut them together.`;
}

/** The first sheet of its stack; null for that sheet itself and for one that lies in none. */
export function followed(ask: GuideAsk, facts: Facts, one: SlotFacts): SlotFacts | null {
  const [first] = stackOf(ask, facts, one);
  return first === undefined || first.slot.id === one.slot.id ? null : first;
}

function stackOf(ask: GuideAsk, facts: Facts, { slot }: SlotFacts): readonly SlotFacts[] {
  const stacks = slotStacks(ask, facts);
  return stacks.find((stack) => stack.some((other) => other.slot.id === slot.id)) ?? [];
}
