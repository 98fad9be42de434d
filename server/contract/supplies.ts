import { z } from 'zod';
import { Chips } from './pads.ts';
import { Corners, Hex, Id, LabTriple, PointPair, Revision, Spot, words } from './values.ts';

export const SupplyKind = z.enum(['cardstock', 'ink']);

export const Supply = z
  .object({
    id: Id,
    kind: SupplyKind,
    name: z.string(),
    colour: z.object({ lab: LabTriple, hex: Hex, name: z.string(), uncertainty: z.number() }),
    photo: Id.nullable(),
    corners: Corners.optional(),
    sheets: z.number().int().nullable(),
    glossy: z
      .boolean()
      .describe('The light mirrored in so much of it that its colour cannot be told.'),
    demo: z.boolean().describe('It came with the demo pad and is not hers.'),
    pad: Id.nullable().describe('The only pad that it is laid beside; null for all of hers.'),
    revision: Revision,
  })
  .meta({ id: 'Supply', description: 'A cardstock or an ink of hers.' });

export const NewSupply = z.strictObject({
  kind: SupplyKind,
  name: words(80),
  /** By its figures, or by the name of a colour: then only roughly. */
  colour: z.union([z.object({ lab: LabTriple }), z.object({ words: words(60) })]),
  sheets: z.number().int().min(0).max(10000).nullable().optional(),
});

/** The words that stand for a colour. */
export const ColourNames = z.object({
  names: z.array(
    z.object({
      name: z.string(),
      lab: LabTriple,
      hex: Hex,
      uncertainty: z
        .number()
        .describe('How far what is called so may lie from it: a standard error in CIEDE2000.'),
    }),
  ),
});

/** A supply by one place that was touched in a photo that is here. */
export const TouchedSupply = z.strictObject({
  kind: SupplyKind,
  name: words(80),
  at: PointPair,
  sheets: z.number().int().min(0).max(10000).nullable().optional(),
});

/** Ties a photo of supplies to the photos of a pad, by the scraps that lie in both; or unties it. */
export const SuppliesTie = z
  .strictObject({
    pad: Id.optional().describe(
      'The pad one of whose photos says how the scraps look; left out where it is untied.',
    ),
    chips: z
      .array(Spot)
      .max(12)
      .describe(
        'Where the scraps lie, three at least. What was taken for cardstock or ink and is told to be one of them is laid aside; what is touched but looks like none stays. None at all: the photo is untied, and what was laid aside is in the list again.',
      ),
  })
  .refine(({ chips }) => chips.length === 0 || chips.length >= 3, {
    message: 'three scraps or more must be touched, or none to untie the photo',
    path: ['chips'],
  })
  .refine(({ pad, chips }) => chips.length === 0 || pad !== undefined, {
    message: 'the pad whose scraps they are must be named',
    path: ['pad'],
  });

export const SupplyPatch = z.strictObject({
  name: words(80).optional(),
  sheets: z.number().int().min(0).max(10000).nullable().optional(),
});

/** The form of a photo of supplies: `name` once, once for each of them in reading order, or not at all: then each has the name of its colour. */
export const SuppliesForm = z.object({
  kind: SupplyKind,
  name: z.array(words(80)).max(60).default([]),
});

export const Supplies = z.object({
  supplies: z.array(Supply),
  notes: z.array(z.string()),
  /** The upright photo that they were found in, with the size in which their corners are told. */
  picture: z
    .object({ address: z.string(), width: z.number().int(), height: z.number().int() })
    .optional(),
  /** In the list of all: the photos that they were found in, where more may be touched. */
  photos: z
    .array(
      z.object({
        id: Id,
        picture: z.string(),
        width: z.number().int(),
        height: z.number().int(),
        chips: Chips,
        tiedTo: Id.nullable().describe('The pad to whose photos it is tied by its scraps.'),
        aside: z
          .array(z.string())
          .describe('Names of what was told to be a scrap: in the list again once it is untied.'),
      }),
    )
    .optional(),
});

const OneColour = z
  .number()
  .int()
  .min(0)
  .max(100)
  .optional()
  .describe(
    'The place in the palette of the one colour that is asked of; none asks of the nearest.',
  );

export const MatchRequest = z.strictObject({ supply: Id, side: Id, colour: OneColour });

/** Every supply against every side. */
export const MatchesRequest = z.strictObject({
  supplies: z.array(Id).min(1).max(200),
  sides: z.array(Id).min(1).max(100),
  colour: OneColour,
});

export const Match = z.object({
  supply: Id,
  side: Id,
  verdict: z.enum(['match', 'close', 'apart', 'cannot tell']),
  /** The palette colour that it is nearest to, or the one that was asked of. */
  nearest: z.object({ lab: LabTriple, hex: Hex, name: z.string(), share: z.number() }),
  at: z
    .object({ lab: LabTriple, hex: Hex, name: z.string() })
    .describe(
      'What it was compared with: of a tone that runs the place on its run, else `nearest`.',
    ),
  /** CIEDE2000 from there, and its standard error. */
  difference: z.number(),
  uncertainty: z.number(),
  /** The direction in words: 'a little lighter and yellower'; empty when alike, or when it cannot be told. */
  direction: z.string(),
  reason: z.string(),
  caution: z.string(),
});

export const Matches = z.object({ matches: z.array(Match) });

/** Supplies that can hardly be told from one of the same kind that was there before. */
export const Twins = z.object({ twins: z.array(z.object({ first: Id, again: Id })) });

/** What a list of supplies did to her shelf. */
export const Listed = z.object({
  added: z.number().int(),
  changed: z.number().int(),
  same: z.number().int().describe('Lines that say what is so already.'),
  supplies: z.array(Supply).describe('All that she has now.'),
});

const Colour = z.object({ lab: LabTriple, hex: Hex, name: z.string() });
const Verdict = Match.shape.verdict;
/** The cards that it is for, by their numbers; empty for a side by itself. */
const Cards = z.array(z.number().int());

export const BestCardstock = z.object({
  supply: Id,
  name: z.string(),
  colour: Colour,
  use: z
    .enum(['picks up', 'unsure', 'quiet', 'odd'])
    .describe(
      'picks up: it repeats a colour of the papers; unsure: the photo cannot tell whether it does; quiet: a neutral that keeps them apart; odd: none of these.',
    ),
  /** In [0, 1]. */
  worth: z.number(),
  verdict: Verdict.describe(
    'What it is beside the colour that it is nearest to, as a match tells it.',
  ),
  nearest: Colour,
  /** CIEDE2000 from that colour, and its standard error. */
  difference: z.number(),
  uncertainty: z.number(),
  why: z.string(),
  alike: z
    .array(z.object({ supply: Id, name: z.string() }))
    .describe('Others of hers that can hardly be told from it.'),
});

export const AccentInk = z.object({
  accent: Colour,
  cards: Cards,
  /** The nearest of her inks; null when she has none. */
  best: z
    .object({
      ink: Id,
      name: z.string(),
      verdict: Verdict,
      difference: z.number(),
      uncertainty: z.number(),
      reason: z.string(),
    })
    .nullable(),
});

/** An ink as it is expected to look on a strip, and whether a greeting can be read. */
export const StampedInk = z.object({
  ink: Id,
  name: z.string(),
  printed: Colour,
  /** Of the printed colour, in CIEDE2000. */
  uncertainty: z.number(),
  reads: z.enum(['small letters', 'large letters only', 'cannot be read']),
  /** The contrast ratio of WCAG 2.2. */
  contrast: z.number(),
  /** Steps of L between strip and letters; below 0 for light letters. */
  lighter: z.number(),
  reason: z.string(),
  /** The colour of the papers that it picks up; null where none is near. */
  picksUp: z.string().nullable(),
});

export const Greeting = z.object({ strip: Colour, cards: Cards, inks: z.array(StampedInk) });

export const Purchase = z.object({
  kind: SupplyKind,
  colour: Colour,
  /** Where on her papers it is found, for one of a plan: 'the ground of Sheet 3, front'; null where none has it. */
  like: z.string().nullable(),
  cards: Cards,
  /** Square centimetres of cardstock, where they are known. */
  area: z.number().nullable(),
  /** '2 sheets of 8 1/2 x 11 in', where it is known how they are cut. */
  sheets: z.string().nullable(),
  /** The supply of hers that runs short; null for a colour that she does not have. */
  more: z
    .object({ supply: Id, name: z.string(), left: z.number().int(), needed: z.number().int() })
    .nullable(),
});

/** A cardstock that the cards of a plan are cut from. */
export const StockTaken = z.object({
  name: z.string(),
  colour: Colour,
  /** The supply of hers; null for one to buy. */
  supply: Id.nullable(),
  /** Null when a piece is larger than the usual sheets. */
  sheets: z.object({ count: z.number().int(), size: z.string() }).nullable(),
  /** How many she has; null when she has not said. */
  left: z.number().int().nullable(),
});

/** The best of what she has for a side, a card or a plan, and what is missing. */
export const BestSupplies = z
  .object({
    cardstock: z.array(BestCardstock),
    accents: z.array(AccentInk),
    greetings: z.array(Greeting),
    missing: z.array(Purchase),
    /** How many sheets of which cardstock the plan takes; empty for a side. */
    takes: z.array(StockTaken),
    /** How far the look of ink on paper can be trusted. */
    range: z.string(),
    caution: z.string(),
  })
  .meta({ id: 'BestSupplies' });

export type Supply = z.infer<typeof Supply>;
export type NewSupply = z.infer<typeof NewSupply>;
export type ColourNames = z.infer<typeof ColourNames>;
export type SuppliesTie = z.input<typeof SuppliesTie>;
export type TouchedSupply = z.infer<typeof TouchedSupply>;
export type Supplies = z.infer<typeof Supplies>;
export type SupplyPatch = z.infer<typeof SupplyPatch>;
export type MatchRequest = z.infer<typeof MatchRequest>;
export type Listed = z.infer<typeof Listed>;
export type BestSupplies = z.infer<typeof BestSupplies>;
export type Twins = z.infer<typeof Twins>;
export type Greeting = z.infer<typeof Greeting>;
export type StampedInk = z.infer<typeof StampedInk>;
export type StockTaken = z.infer<typeof StockTaken>;
export type Purchase = z.infer<typeof Purchase>;
export type Match = z.infer<typeof Match>;
