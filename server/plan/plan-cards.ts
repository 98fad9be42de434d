import type { PlanAsk } from './ask.ts';
import { byPlace, facesShown, hasTies, tiedUp, upOf } from './faces-up.ts';
import { instanceOf } from './instance.ts';
import type { Instance } from './instance.ts';
import { solve } from './network/solve.ts';
import type { Solution } from './network/network.ts';
import { notesOf } from './notes.ts';
import type { Plan } from './plan.ts';
import { readCards } from './read-plan.ts';

export type { PlanAsk } from './ask.ts';

/**
 * The best plan for a batch: which sheet each slot is cut from, which side every piece shows, which
 * cardstock every mat and base takes.
 *
 * Takes       the pad as read, the cards with their layouts, a cutting scheme, her supplies, her pins
 *             and taste, a seed, and a limit (nodes of the search, or a question that is asked).
 * Gives       the plan with its value (sum of the card scores, each in [0, 1]) and a bound that no plan
 *             on these slots can pass; `proven` when they are equal. Throws a Refusal 'does-not-fit'
 *             when there are fewer sheets than slots, 'clash' when her wishes cannot all hold.
 * Method      with the sheets in the slots fixed the cards are independent, so sides and cardstock are
 *             maximised out exactly; what remains is a cost network over the slots, solved by branch
 *             and bound (network/solve.ts).
 * Checked     by `checkPlan`, written apart from it, and against brute force on small worlds.
 */
export function planCards(ask: PlanAsk): Plan {
  const { instance, solution } = laidOut(instanceOf(ask), []);
  return planOf(instance, solution);
}

export interface LaidOut {
  readonly instance: Instance;
  readonly solution: Solution;
}

/**
 * Solves an instance. Where what a piece shows depends on which face of its sheet lies up, and that is not said, it is
 * first solved with all fronts up, and then anew with the faces up that most pieces show: value, bound and proof
 * are those of the sheets as they lie then. Triangles of two cards that share a rectangle are free of each other at
 * first, and then show the face that lies up.
 */
export function laidOut(first: Instance, starts: readonly (readonly number[])[]): LaidOut {
  const { ask } = first;
  const begun = solve(first.network, starts, ask.seed, ask.limit);
  const ties = hasTies(ask.scheme);
  if (ask.up !== undefined || begun.choice === null || !(byPlace(ask.pad) || ties))
    return { instance: first, solution: begun };
  const up = tiedUp(ask, facesShown(ask, readCards(first, begun.choice)));
  const fronts = Object.values(up).every((face) => face === 'front');
  if (fronts && !ties) return { instance: { ...first, ask: { ...ask, up } }, solution: begun };
  const instance = instanceOf({ ...ask, up });
  const solution = solve(instance.network, [begun.choice], ask.seed, ask.limit);
  return { instance, solution };
}

/** The plan that a solution stands for, or that one of its choices stands for. */
export function planOf(
  instance: Instance,
  solution: Solution,
  choice: readonly number[] | null = solution.choice,
): Plan {
  if (choice === null)
    throw new RangeError('Expected some choice of sheets, as the wishes were found possible');
  const cards = readCards(instance, choice);
  const value = cards.reduce((sum, card) => sum + card.score, 0);
  const proven = solution.proven && choice === solution.choice;
  return {
    cards,
    slots: Object.fromEntries(
      instance.ask.scheme.slots.map((slot, at) => [
        slot.id,
        instance.designs[choice[at]!]!.sheet.id,
      ]),
    ),
    value,
    bound: proven ? value : Math.max(value, solution.bound),
    proven,
    notes: notesOf(instance.ask, cards),
    ...upOf(instance.ask),
  };
}
