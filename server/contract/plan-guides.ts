import { z } from 'zod';
import { Hex, Id } from './values.ts';
import { ShownSheet } from './shown-cuts.ts';

/** What is done of the guide of a plan: steps by their names; and one more, or one fewer. */
export const Ticks = z.object({ ticks: z.array(Id) });
export const Tick = z.strictObject({ step: Id, done: z.boolean() });

/** How one sheet is cut: its picture with the numbered cuts, and the cuts in words. */
export const SlotCuts = ShownSheet.extend({
  slot: Id,
  sheet: Id,
  /** The sheet's label, and which copy of it where there are more. */
  name: z.string(),
  /** Which face lies up, and what may be cut with it. */
  laying: z.string(),
  /** The first sheet of its stack, after which it comes as it is cut alike; null for that one and for one by itself. */
  follows: z.string().nullable(),
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
  sheets: z.array(
    ShownSheet.extend({
      id: z.string(),
      /** Which of its sheets these cuts are for, from 1: more than one where they are cut together. */
      numbers: z.array(z.number().int()),
      laying: z.string(),
    }),
  ),
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
  elements: z.array(
    z.object({
      element: Id,
      kind: z.enum(['stamp', 'die-cut']),
      main: z.string(),
      small: z.string(),
      /** The layer before whose gluing it is done, as a stamp is; null after all layers. */
      before: z.string().nullable(),
    }),
  ),
  /** What the label of its bag says: how many pieces, from which sheets. */
  label: z.object({ patterned: z.number().int(), plain: z.number().int(), sheets: z.string() }),
});

/** What the printed guide says beside the cuts of the patterned sheets (GET /api/plans/ID/cuts). */
export const PlanGuide = z.object({
  cautions: z.array(z.string()),
  cardstock: z.array(StockCuts),
  /** What it takes of cardstock and ink for one person, what of that she has, and what it means for her purse. */
  takes: z.object({
    of: z.array(
      z.object({
        kind: z.enum(['cardstock', 'ink']),
        name: z.string(),
        hex: Hex,
        /** '3 sheets of 8 1/2 x 11 in; you have 5', 'for the greetings of cards 1 and 3; you have it'. */
        said: z.string(),
        toBuy: z.boolean(),
      }),
    ),
    said: z.string(),
  }),
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
