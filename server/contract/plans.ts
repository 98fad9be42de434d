import { z } from 'zod';
import { Id, LabTriple, Hex } from './values.ts';
import { Role } from './layouts.ts';

/** This paper (or side, or supply) on that layer of that card. Cards are numbered from 1. */
export const Pin = z.object({
  card: z.number().int().min(1),
  layer: Id,
  sheet: Id.optional(),
  side: Id.optional(),
  supply: Id.optional(),
});

export const Taste = z.object({
  /** -1 closely matched ... 1 lively contrast. */
  contrast: z.number().min(-1).max(1).default(0),
  /** -1 calm ... 1 busy. */
  busy: z.number().min(-1).max(1).default(0),
  /** -1 soft ... 1 bold. */
  bold: z.number().min(-1).max(1).default(0),
});

/** What was wished of a plan, as it is kept with it: a plan of another version may know more. */
const Asked = z.object({
  pad: Id,
  cards: z
    .array(z.object({ layout: Id, count: z.number().int().min(1).max(60) }))
    .min(1)
    .max(60),
  pins: z.array(Pin).max(400).optional(),
  without: z.array(Id).max(100).optional(),
  from: Id.optional().describe(
    'The plan of the same pad that it changes, or follows; undo goes back to it.',
  ),
  anew: z
    .boolean()
    .optional()
    .describe(
      'Its cards were chosen anew: it follows `from`, to which undo goes back, but is no change of it.',
    ),
  keepOthers: z
    .boolean()
    .optional()
    .describe(
      'Where only its pins differ from those of `from`: leave the cards that they do not speak of as they lie there, if that costs at most 1 of 100 for each card against the best plan of the same cuts. Where sheets have room for it, only pieces that the pins speak of are cut from another sheet. `otherwise` then names the better plan.',
    ),
  taste: Taste.optional(),
  sheets: z
    .number()
    .int()
    .min(1)
    .max(200)
    .optional()
    .describe(
      'Take up to so many sheets, each cut as suits the cards best. Left out: as few sheets as can be cut.',
    ),
  scheme: z
    .array(
      z.object({
        slot: Id,
        pieces: z.array(z.object({ card: z.number().int().min(1), layer: Id })).max(40),
      }),
    )
    .min(1)
    .max(200)
    .optional()
    .describe(
      'Her own table: which sheet gives which piece to which card. Its cuts are worked out.',
    ),
});

export const NewPlan = z.strictObject(Asked.shape);

export const PlannedLayer = z.object({
  layer: Id,
  /** What it is called, `left panel`, where that is not its id in words. */
  called: z.string().optional(),
  role: Role,
  sheet: Id.optional(),
  side: Id.optional(),
  supply: Id.optional(),
  /** For a cardstock that she does not have yet: what to buy. */
  wanted: z.object({ lab: LabTriple, hex: Hex, name: z.string() }).optional(),
  /** What is cut, as text: `4 in x 5 1/4 in`. */
  size: z.string(),
});

export const Reason = z.object({
  /** The two layers that it speaks of; one layer, or none, when it is about the card. */
  layers: z.array(Id),
  /** Whole sentences: what speaks for it and what against it, first what counts for its score. */
  text: z.string(),
  /** One short sentence: the weightiest of it. */
  short: z.string(),
  /** How good, in [0, 1]. */
  score: z.number(),
});

export const PlannedCard = z.object({
  id: Id,
  number: z.number().int(),
  layout: Id,
  layers: z.array(PlannedLayer),
  score: z.number(),
  /** Why, in a sentence or two; and the same short enough to stand under its picture. */
  why: z.string(),
  short: z.string(),
  /** The worst first. */
  reasons: z.array(Reason),
  picture: z.string(),
  drawing: z
    .string()
    .optional()
    .describe(
      'An SVG with its papers beside, of a card that looked otherwise in the plan it came from; only where `drawings` asked for it.',
    ),
  same: z
    .literal(true)
    .optional()
    .describe(
      'It looks as it did in the plan that it came from, whose picture of it may be kept; only where `drawings` asked for it.',
    ),
});

/** A paper of the pad as a plan knew it. */
export const PlannedPaper = z.object({
  sheet: Id,
  copies: z.number().int(),
  sides: z.array(
    z.object({
      side: Id,
      swatch: z.string().describe('Address of its swatch as it was then.'),
      direction: z.enum(['none', 'two-way', 'one-way']),
      up: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
    }),
  ),
});

export const Plan = z.object({
  id: Id,
  pad: Id,
  createdAt: z.string(),
  /** What was wished of it. */
  asked: Asked,
  /**
   * Sum over the cards of their scores, and an upper bound that no plan with these wishes can pass: none on
   * these slots, or where `asked.sheets` is given, none however the sheets are cut.
   */
  value: z.number(),
  bound: z.number(),
  proven: z.boolean(),
  otherwise: z
    .object({
      slots: z.record(Id, Id).describe('Which sheet each slot is cut from.'),
      gain: z.number().describe('What it is worth more.'),
      cards: z.array(z.number().int()).describe('The cards that it makes otherwise.'),
    })
    .optional()
    .describe(
      'The best plan that is known, where other cards were left as they lay instead. To have it, post its slots to /api/plans/ID/taken.',
    ),
  /** The proof in words. */
  verdict: z.string(),
  cards: z.array(PlannedCard),
  sheetsUsed: z.array(
    z.object({ slot: Id, sheet: Id, cards: z.array(z.number().int()), use: z.number() }),
  ),
  fewestSheets: z.number().int(),
  fewestSheetsProven: z.boolean(),
  weakest: z.number().int().nullable(),
  supplies: z.array(Id).describe('All cardstock and inks that it was chosen from.'),
  papers: z
    .array(PlannedPaper)
    .describe(
      'The papers as it knew them: one of which the pad tells otherwise was corrected, added or taken away since.',
    ),
  notes: z.array(z.string()),
  guide: z.string(),
});

export const PlanSummary = z.object({
  id: Id,
  pad: Id,
  createdAt: z.string(),
  cards: z.number().int(),
  value: z.number(),
  from: Id.nullable().describe('The plan that it changed, or followed; null for a first one.'),
  choice: Id.describe(
    'The plan that was made when its cards were chosen: its own id for that one, the same for all that changed it.',
  ),
  ticks: z.number().int().describe('How many ticks its guide has.'),
});

export const PlanList = z.object({ plans: z.array(PlanSummary) });

export type Pin = z.infer<typeof Pin>;
export type Taste = z.infer<typeof Taste>;
export type NewPlan = z.infer<typeof NewPlan>;
export type PlannedLayer = z.infer<typeof PlannedLayer>;
export type PlannedCard = z.infer<typeof PlannedCard>;
export type Plan = z.infer<typeof Plan>;
export type PlanSummary = z.infer<typeof PlanSummary>;
