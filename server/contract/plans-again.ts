import { z } from 'zod';
import { Hex, Id, LabTriple } from './values.ts';
import { Pin } from './plans.ts';

/** What could lie in one layer of one card instead: every side of the pad, or every cardstock of hers. */
export const LayerChoice = z.object({
  sheet: Id.optional(),
  side: Id.optional(),
  supply: Id.optional(),
  /** True for what lies there now. */
  now: z.boolean(),
  /** What the card would score with it, its other papers left as they are. */
  score: z.number(),
  /** False when her other wishes stand in its way: then it can only be had once they are taken back. */
  allowed: z.boolean(),
  /** The pins that stand in its way; empty when it is allowed, or when it is a sheet that she left out. */
  forbiddenBy: z.array(Pin),
  /** The same as a sentence with what she can do; null when it is allowed. */
  because: z.string().nullable(),
});
export const LayerChoices = z.object({
  choices: z.array(LayerChoice).describe('What is allowed first, and of that the best first.'),
});

/** One slot cut from another sheet than in the plan it is laid beside. */
export const Swap = z.object({
  slot: Id,
  from: Id,
  to: Id,
  /** The cards that get pieces of it. */
  cards: z.array(z.number().int()),
});

/** Another plan for the same cards and cuts. To have it, post its slots to /api/plans/ID/taken. */
export const OtherPlan = z.object({
  value: z.number(),
  /** What it is worth more (or less, below 0) than the plan it is laid beside. */
  gain: z.number(),
  bound: z.number(),
  proven: z.boolean(),
  swaps: z.array(Swap),
  /** The same in words, and what it gains in all. */
  changes: z.array(z.string()),
  /** The cards that it makes otherwise. */
  pictures: z.array(z.object({ card: z.number().int(), picture: z.string() })),
  slots: z.record(Id, Id).describe('Which sheet each slot is cut from.'),
});

export const OtherPlans = z.object({ others: z.array(OtherPlan) });

/** What fewer sheets cost: the best plan found for every number of sheets, the fewest first. */
export const SheetCurve = z.object({
  points: z.array(
    z.object({
      sheets: z.number().int(),
      value: z.number(),
      bound: z.number(),
      /** Part of the best value in the list, in [0, 1]. */
      part: z.number(),
    }),
  ),
  /** False while more is being found out: ask again, and the answer goes on from here. */
  complete: z.boolean(),
});

export const TakenPlan = z.strictObject({
  slots: z.record(Id, Id).describe('Which sheet each slot is cut from, as it was offered.'),
  supplies: z
    .enum(['then', 'now'])
    .default('then')
    .describe(
      'now: cardstock and inks are chosen anew from what is there today; the papers lie where the slots say.',
    ),
});

/** The card with the lowest score and what would make it better, the most helpful first. */
export const Weakest = z.object({
  card: z.number().int(),
  score: z.number(),
  mends: z.array(
    z.object({
      text: z.string(),
      /** What the card gains, and what the whole plan gains; it may lose. */
      card: z.number(),
      plan: z.number(),
      /** A cardstock to buy, and what the layers of the card are called that it is for. */
      wanted: z
        .object({ lab: LabTriple, hex: Hex, name: z.string(), layers: z.array(z.string()) })
        .optional(),
      /** The sheet to put in, and the slot it goes to. */
      swap: Swap.optional(),
    }),
  ),
  taken: z
    .boolean()
    .describe(
      'Whether a sheet would better it that lies on other cards already, or that takes more from them than it gives.',
    ),
});

export type OtherPlan = z.infer<typeof OtherPlan>;
export type LayerChoice = z.infer<typeof LayerChoice>;
export type SheetCurve = z.infer<typeof SheetCurve>;
export type Weakest = z.infer<typeof Weakest>;
export type Swap = z.infer<typeof Swap>;
