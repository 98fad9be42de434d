import { z } from 'zod';
import { Id } from './values.ts';

/** Places in the drawing of a sheet, in the drawing's own units, from its upper left corner. */
const Spot = z.object({ x: z.number(), y: z.number() });
const Place = Spot.extend({ width: z.number(), height: z.number() });

/** A stroke of the trimmer: which part of the sheet lies under it, and where the blade runs. */
const ShownCut = z.object({
  kind: z.literal('cut'),
  part: Place,
  from: Spot,
  to: Spot,
  /** The middle of its number on the drawing. */
  badge: Spot,
  /** The part of its length, from the upper or left end, at which its measure hides least of the drawing. */
  measure: z.number(),
});

/** The finish of a single piece, drawn by itself as it lies on its card, in mm from its upper left corner. */
const ShownFinish = z.object({
  kind: z.literal('finish'),
  /** Where it lay on the sheet. */
  part: Place,
  piece: z.object({ width: z.number(), height: z.number() }),
  /** What stays of it. */
  kept: z.array(Spot),
  /** The two pencil marks of a slant; none for other finishes. */
  marks: z.array(Spot),
  /** On the drawing of the sheet: the middle of its number, and the lines along which it is cut. */
  badge: Spot,
  tracks: z.array(z.array(Spot)),
});

/** A step of the hands: what to set or mark, what comes of it, and where it is on the sheet. */
export const CutStep = z.object({
  number: z.number().int(),
  main: z.string(),
  small: z.string(),
  shown: z.discriminatedUnion('kind', [ShownCut, ShownFinish]),
});

/** A piece that a sheet gives. */
export const CutPiece = z.object({
  card: z.number().int(),
  layer: Id,
  name: z.string(),
  size: z.string(),
  /** A triangle that is half of the rectangle around it, which another may share. */
  half: z.boolean(),
  /** Whether it shows the side that lies up while it is cut. */
  up: z.boolean(),
});

/** What every drawing of a sheet comes with. */
export const ShownSheet = z.object({
  /** Address of an SVG: the sheet with its numbered cuts. */
  picture: z.string(),
  /** Width and height of the drawing, in its own units. */
  drawing: z.object({ width: z.number(), height: z.number() }),
  steps: z.array(CutStep),
  pieces: z.array(CutPiece),
  /** Sizes of what is left of the sheet and worth keeping, the largest first. */
  left: z.array(z.string()),
});

export type CutStep = z.infer<typeof CutStep>;
export type CutPiece = z.infer<typeof CutPiece>;
export type ShownSheet = z.infer<typeof ShownSheet>;
