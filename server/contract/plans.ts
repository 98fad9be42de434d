import { z } from 'zod';
import { Id, LabTriple, Hex } from './values.ts';
import { Role } from './layouts.ts';
import { ShownSheet } from './shown-cuts.ts';

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

export const NewPlan = z.object({
  pad: Id,
  cards: z
    .array(z.object({ layout: Id, count: z.number().int().min(1).max(60) }))
    .min(1)
    .max(60),
  pins: z.array(Pin).max(400).optional(),
  without: z.array(Id).max(100).optional(),
  from: Id.optional().describe('The plan of the same pad that it changes; undo goes back to it.'),
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

export const PlannedLayer = z.object({
  layer: Id,
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
  /** Whole sentences: what speaks for it and what against it, the worst first. */
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
});

export const Plan = z.object({
  id: Id,
  pad: Id,
  createdAt: z.string(),
  /** What was wished of it. */
  asked: NewPlan,
  /**
   * Sum over the cards of their scores, and an upper bound that no plan with these wishes can pass: none on
   * these slots, or where `asked.sheets` is given, none however the sheets are cut.
   */
  value: z.number(),
  bound: z.number(),
  proven: z.boolean(),
  /** The proof in words. */
  verdict: z.string(),
  cards: z.array(PlannedCard),
  sheetsUsed: z.array(
    z.object({ slot: Id, sheet: Id, cards: z.array(z.number().int()), use: z.number() }),
  ),
  fewestSheets: z.number().int(),
  fewestSheetsProven: z.boolean(),
  weakest: z.number().int().nullable(),
  notes: z.array(z.string()),
  guide: z.string(),
});

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

export const TakenPlan = z.object({
  slots: z.record(Id, Id).describe('Which sheet each slot is cut from, as it was offered.'),
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
      /** A cardstock to buy. */
      wanted: z.object({ lab: LabTriple, hex: Hex, name: z.string() }).optional(),
      /** The sheet to put in, and the slot it goes to. */
      swap: Swap.optional(),
    }),
  ),
});

export const PlanSummary = z.object({
  id: Id,
  pad: Id,
  createdAt: z.string(),
  cards: z.number().int(),
  value: z.number(),
  /** The plan that it changed; null for a first one. */
  from: Id.nullable(),
});

export const PlanList = z.object({ plans: z.array(PlanSummary) });

/** What is done of the guide of a plan: steps by their names; and one more, or one fewer. */
export const Ticks = z.object({ ticks: z.array(Id) });
export const Tick = z.object({ step: Id, done: z.boolean() });

/** How one sheet is cut: its picture with the numbered cuts, and the cuts in words. */
export const SlotCuts = ShownSheet.extend({
  slot: Id,
  sheet: Id,
  /** Which face lies up, and what may be cut with it. */
  laying: z.string(),
});
export const PlanCuts = z.object({
  slots: z.array(SlotCuts),
  /** That sizes between two marks of the ruler are rounded; null when none is. */
  rounding: z.string().nullable(),
});

/** A cardstock of a plan: its pieces, and how each of its sheets is cut. */
export const StockCuts = z.object({
  name: z.string(),
  hex: Hex,
  toBuy: z.boolean(),
  /** Null when a piece is larger than the usual sheets. */
  takes: z.object({ sheets: z.number().int(), size: z.string() }).nullable(),
  pieces: z.array(z.object({ count: z.number().int(), size: z.string(), use: z.string() })),
  sheets: z.array(ShownSheet.extend({ id: z.string(), laying: z.string() })),
});

/** How a card is made: its base with the scores, then its layers in the order of gluing. */
export const CardToMake = z.object({
  number: z.number().int(),
  name: z.string(),
  picture: z.string(),
  why: z.string(),
  base: z.string(),
  /** Where the flat base is scored, measured from that edge; none for a card that is not folded. */
  scores: z.object({
    from: z.enum(['left', 'top']),
    at: z.array(z.string()),
    /** To draw it: the flat base and where its scores lie, in mm. */
    flat: z.object({ width: z.number(), height: z.number() }),
    places: z.array(z.number()),
  }),
  greeting: z.string(),
  post: z.string(),
  layers: z.array(
    z.object({
      number: z.number().int(),
      layer: Id,
      name: z.string(),
      size: z.string(),
      /** 'Sheet 3, front', or the name of a cardstock. */
      from: z.string(),
      /** The side that shows; null for plain cardstock. */
      side: Id.nullable(),
      /** Colour of the cardstock; null for a patterned paper. */
      hex: Hex.nullable(),
      note: z.string(),
    }),
  ),
  /** What is stamped on it or cut by a die, and where. */
  elements: z.array(z.object({ main: z.string(), small: z.string() })),
  /** What the label of its bag says: how many pieces, from which sheets. */
  label: z.object({ patterned: z.number().int(), plain: z.number().int(), sheets: z.string() }),
});

/** What the printed guide says beside the cuts of the patterned sheets (GET /api/plans/ID/cuts). */
export const PlanGuide = z.object({
  cautions: z.array(z.string()),
  cardstock: z.array(StockCuts),
  cards: z.array(CardToMake),
  shopping: z.array(
    z.object({
      /** ISCC-NBS words. */
      name: z.string(),
      kind: z.enum(['cardstock', 'ink']),
      hex: Hex,
      cards: z.array(z.number().int()),
      squareCentimetres: z.number().int(),
      /** '2 more sheets of 8 1/2 x 11 in: 3 are needed and 1 is left'. */
      sheets: z.string(),
    }),
  ),
});

export type PlanGuide = z.infer<typeof PlanGuide>;
export type StockCuts = z.infer<typeof StockCuts>;
export type CardToMake = z.infer<typeof CardToMake>;
export type Ticks = z.infer<typeof Ticks>;
export type SlotCuts = z.infer<typeof SlotCuts>;
export type PlanCuts = z.infer<typeof PlanCuts>;
export type { CutPiece, CutStep, ShownSheet } from './shown-cuts.ts';
export type Pin = z.infer<typeof Pin>;
export type Taste = z.infer<typeof Taste>;
export type NewPlan = z.infer<typeof NewPlan>;
export type PlannedLayer = z.infer<typeof PlannedLayer>;
export type PlannedCard = z.infer<typeof PlannedCard>;
export type Plan = z.infer<typeof Plan>;
export type OtherPlan = z.infer<typeof OtherPlan>;
export type LayerChoice = z.infer<typeof LayerChoice>;
export type SheetCurve = z.infer<typeof SheetCurve>;
export type Weakest = z.infer<typeof Weakest>;
export type Swap = z.infer<typeof Swap>;
export type PlanSummary = z.infer<typeof PlanSummary>;
