import { expected } from '../refusals/refusal.ts';
import { upOf } from './faces-up.ts';
import type { Instance } from './instance.ts';
import { notesOf } from './notes.ts';
import type { Plan } from './plan.ts';
import { readCards } from './read-plan.ts';

/** What is known of the best plan: no plan passes the bound, and whether one that reaches it is proven best. */
export type Best = Pick<Plan, 'bound' | 'proven'>;

/** Sums of the same scores in another order differ by less. */
export const ROUNDING = 1e-9;

/** The design of each slot when these sheets lie in them; a Refusal where her wishes or the pad do not allow it. */
export function chosenIn(
  { ask, designs, network }: Instance,
  slots: Readonly<Record<string, string>>,
): number[] {
  const choice = ask.scheme.slots.map((slot, at) => {
    const design = designs.findIndex(({ sheet }) => sheet.id === slots[slot.id]);
    if (!network.allowed[at]!.includes(design))
      throw expected(
        'a sheet of the pad that may be cut for this slot',
        `slots.${slot.id}`,
        slots[slot.id] ?? null,
        'Take a plan as it was offered; if a pin was changed since, ask for others again.',
        design < 0 ? 'not-found' : 'clash',
      );
    return design;
  });
  const over = designs.findIndex(
    (_, design) => choice.filter((one) => one === design).length > network.copies[design]!,
  );
  if (over >= 0)
    throw expected(
      `each sheet at most as often as there are copies of it`,
      'slots',
      designs[over]!.sheet.id,
      'Take a plan as it was offered.',
      'clash',
    );
  return choice;
}

/** The plan with these designs in its slots; its bound is that of the best plan, and it is proven best where it reaches that. */
export function planIn(instance: Instance, choice: readonly number[], best: Best): Plan {
  const { ask, designs } = instance;
  const cards = readCards(instance, choice);
  const value = cards.reduce((sum, card) => sum + card.score, 0);
  const bound = Math.max(value, best.bound);
  return {
    cards,
    slots: Object.fromEntries(
      ask.scheme.slots.map(({ id }, at) => [id, designs[choice[at]!]!.sheet.id]),
    ),
    value,
    bound,
    proven: best.proven ? value >= bound - ROUNDING : Math.abs(value - best.bound) <= ROUNDING,
    notes: notesOf(ask, cards),
    ...upOf(ask),
  };
}
