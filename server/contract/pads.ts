import { z } from 'zod';
import { Corners, Hex, Id, LabTriple, SizeText } from './values.ts';

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
  busyness: z.number(),
  tonal: z.boolean(),
});

export const Side = z.object({
  id: Id,
  photo: Id,
  corners: Corners,
  palette: z.array(PaletteColour),
  pattern: Pattern,
  confidence: z.number(),
  notes: z.array(z.string()),
  /** Address of the swatch picture. */
  swatch: z.string(),
});

export const Sheet = z.object({
  id: Id,
  label: z.string(),
  copies: z.number().int(),
  front: Side.nullable(),
  back: Side.nullable(),
});

export const NewPad = z.object({
  name: z.string().trim().min(1).max(120),
  sheetSize: SizeText,
});

export const PadSummary = z.object({
  id: Id,
  name: z.string(),
  sheetSize: SizeText,
  sheetCount: z.number().int(),
  createdAt: z.string(),
});

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

export const Photo = z.object({
  id: Id,
  width: z.number().int(),
  height: z.number().int(),
  side: z.enum(['front', 'back']),
  arrangement: z.string(),
  /** Address of the upright photo, shrunk for the screen, without metadata. */
  picture: z.string(),
  white: z.object({ kind: z.enum(['found', 'tapped', 'none']), corners: Corners.nullable() }),
  notes: z.array(z.string()),
});

export const Pad = z.object({
  id: Id,
  name: z.string(),
  sheetSize: SizeText,
  createdAt: z.string(),
  photos: z.array(Photo),
  sheets: z.array(Sheet),
  story: z.array(StoryColour),
  families: z.array(Family),
  patternSets: z.array(z.array(Id)),
  bridges: z.array(Id),
});

export const PhotoAnswer = z.object({
  photo: Photo,
  sides: z.array(Side),
  notes: z.array(z.string()),
});

/** Corrects what was found: the corners of a side. */
export const SidePatch = z.object({ corners: Corners });

/** Corrects a sheet: its label, how many copies, which sides it has. */
export const SheetPatch = z.object({
  label: z.string().trim().min(1).max(60).optional(),
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
export type Family = z.infer<typeof Family>;
export type NewPad = z.infer<typeof NewPad>;
export type SheetPatch = z.infer<typeof SheetPatch>;
export type SidePatch = z.infer<typeof SidePatch>;
