import { z } from 'zod';
import { Corners, Hex, Id, LabTriple, Revision, SizeText, Spot, words } from './values.ts';

export const PaletteColour = z.object({
  lab: LabTriple,
  hex: Hex,
  share: z.number(),
  role: z.enum(['ground', 'accent']),
  /** ISCC-NBS name at the middle level, with a lightness word where it helps. */
  name: z.string(),
  /** Standard error in CIEDE2000. */
  uncertainty: z.number(),
});

export const Pattern = z.object({
  /** A length as text, or null when the print does not repeat on the sheet. */
  repeat: z.string().nullable(),
  scale: z.string(),
  direction: z.enum(['none', 'two-way', 'one-way']),
  up: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
  told: z.boolean().describe('She has said which way is up, or that no way is.'),
  busyness: z.number(),
  tonal: z.boolean(),
});

export const Side = z
  .object({
    id: Id,
    photo: Id,
    corners: Corners,
    palette: z.array(PaletteColour),
    pattern: Pattern,
    confidence: z
      .number()
      .describe('How surely it was found, in [0, 1]; below 0.5 the corners want a look.'),
    notes: z.array(z.string()),
    swatch: z.string().describe('Address of the swatch picture.'),
    revision: Revision,
  })
  .meta({ id: 'Side', description: 'The front or back of a sheet, as read from a photo.' });

export const Sheet = z
  .object({
    id: Id,
    label: z.string(),
    copies: z.number().int(),
    front: Side.nullable(),
    back: Side.nullable(),
    revision: Revision,
  })
  .meta({ id: 'Sheet', description: 'A paper of the pad with its two sides.' });

export const NewPad = z.strictObject({
  name: words(120),
  sheetSize: SizeText,
});

export const PadPatch = z.strictObject({ name: words(120) });

export const PadSummary = z.object({
  id: Id,
  name: z.string(),
  sheetSize: SizeText,
  sheetCount: z.number().int(),
  createdAt: z.string(),
  revision: Revision,
});

export const PadList = z.object({ pads: z.array(PadSummary) });

export const StoryColour = z.object({
  lab: LabTriple,
  hex: Hex,
  name: z.string(),
  share: z.number(),
  sides: z.array(Id),
});

export const Family = z.object({
  name: z.string(),
  lab: LabTriple,
  hex: Hex,
  sides: z.array(Id),
});

/** Scraps of paper that lie in every picture and tie the colours of the pad's photos together. */
export const Chips = z.object({
  tie: z
    .enum(['none', 'first', 'tied'])
    .describe(
      'none: no chips; first: this photo defines their colours; tied: it was corrected towards them.',
    ),
  scraps: z.array(
    z.object({
      corners: Corners,
      lab: LabTriple,
      hex: Hex,
      name: z.string(),
    }),
  ),
});

export const Photo = z.object({
  id: Id,
  width: z.number().int(),
  height: z.number().int(),
  side: z.enum(['front', 'back']),
  arrangement: z.string(),
  picture: z
    .string()
    .describe('Address of the upright photo, shrunk for the screen, without metadata.'),
  white: z.object({ kind: z.enum(['found', 'tapped', 'none']), corners: Corners.nullable() }),
  chips: Chips,
  notes: z.array(z.string()),
});

export const Pad = z
  .object({
    id: Id,
    name: z.string(),
    sheetSize: SizeText,
    createdAt: z.string(),
    revision: Revision,
    photos: z.array(Photo),
    sheets: z.array(Sheet),
    story: z.array(StoryColour).describe('The few colours that run through the pad.'),
    families: z.array(Family).describe('The sides led by one colour of the story.'),
    patternSets: z
      .array(z.array(Id))
      .describe('Sets of sides that show one pattern in several colours.'),
    bridges: z.array(Id).describe('Sheets that carry most of the colour story.'),
  })
  .meta({ id: 'Pad', description: 'A pad with its photos, sheets and colour story.' });

export const PhotoAnswer = z.object({
  photo: Photo,
  sides: z.array(Side),
  notes: z.array(z.string()),
});

export const ChipSpots = z.array(Spot).min(3).max(12);

/** The form of an upload, beside the file itself. */
export const PhotoForm = z.object({
  side: z.enum(['front', 'back']),
  arrangement: words(80).describe(
    'Any word: photos of the same word are the same sheets turned over in place.',
  ),
  white: Spot.optional().describe(
    'Where a plain white card lies in the picture, as JSON: its corners, or one place on it.',
  ),
  chips: ChipSpots.optional().describe(
    'Where the scraps lie that she lays into every picture (white, grey, black and some colours), as JSON.',
  ),
});

/** Reads a photo again with the white card, or the scraps, where she shows them. */
export const PhotoPatch = z
  .strictObject({ white: Spot.optional(), chips: ChipSpots.optional() })
  .refine(({ white, chips }) => white !== undefined || chips !== undefined, {
    message: 'white or chips must be shown',
    path: ['white'],
  });

export const Companion = z.object({
  side: Id,
  score: z.number().describe('How well they go together, in [0, 1].'),
  why: z.string(),
});

export const SidePair = z.object({ a: Id, b: Id, score: z.number(), why: z.string() });

/** Companions of one side when one was named, else the best pairs of the pad. */
export const Coordination = z.object({
  companions: z.array(Companion).optional(),
  pairs: z.array(SidePair).optional(),
});

/** Corrects what was found of a side: its corners, or which way its print is up. */
export const SidePatch = z
  .strictObject({
    corners: Corners.optional(),
    up: z
      .union([z.literal(0), z.literal(90), z.literal(180), z.literal(270), z.literal('none')])
      .optional()
      .describe('How far, clockwise, the swatch is turned to bring its up to the top; or none.'),
  })
  .refine(({ corners, up }) => corners !== undefined || up !== undefined, {
    message: 'Expected corners or up, as something has to be corrected.',
    path: ['corners'],
  });

/** Corrects a sheet: its label, how many copies, which sides it has. */
export const SheetPatch = z.strictObject({
  label: words(60).optional(),
  copies: z.number().int().min(1).max(24).optional(),
  front: Id.nullable().optional(),
  back: Id.nullable().optional(),
});

export type PaletteColour = z.infer<typeof PaletteColour>;
export type Pattern = z.infer<typeof Pattern>;
export type Side = z.infer<typeof Side>;
export type Sheet = z.infer<typeof Sheet>;
export type Pad = z.infer<typeof Pad>;
export type PadSummary = z.infer<typeof PadSummary>;
export type Photo = z.infer<typeof Photo>;
export type PhotoAnswer = z.infer<typeof PhotoAnswer>;
export type StoryColour = z.infer<typeof StoryColour>;
export type PhotoForm = z.infer<typeof PhotoForm>;
export type Companion = z.infer<typeof Companion>;
export type Coordination = z.infer<typeof Coordination>;
export type Family = z.infer<typeof Family>;
export type NewPad = z.infer<typeof NewPad>;
export type SheetPatch = z.infer<typeof SheetPatch>;
export type SidePatch = z.infer<typeof SidePatch>;
