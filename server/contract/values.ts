import { z } from 'zod';

/** Values that many nouns of the wire share. */

/** A length as a person writes it: `4 1/4 in`, `5-3/4 in`, `108 mm`, `14,6 cm`. */
export const LengthText = z
  .string()
  .min(1)
  .max(40)
  .meta({ examples: ['4 1/4 in', '108 mm'] });

export const SizeText = z.object({ width: LengthText, height: LengthText });

/** CIELAB under D65, 2 degree observer. */
export const LabTriple = z.tuple([
  z.number().min(0).max(100),
  z.number().min(-200).max(200),
  z.number().min(-200).max(200),
]);

/** A point in pixels of the upright photo. */
export const PointPair = z.tuple([z.number(), z.number()]);

/** Four corners, clockwise from the sheet's top left. */
export const Corners = z.tuple([PointPair, PointPair, PointPair, PointPair]);

export const Hex = z.string().regex(/^#[0-9a-f]{6}$/);

export const Id = z
  .string()
  .min(1)
  .max(64)
  .regex(/^[A-Za-z0-9_-]+$/);

/** RFC 9457 problem details, with the field, the value received and the mend. */
export const Problem = z.object({
  type: z.string(),
  title: z.string(),
  status: z.number().int(),
  detail: z.string(),
  field: z.string().optional(),
  received: z.unknown().optional(),
  mend: z.string().optional(),
});

export type Problem = z.infer<typeof Problem>;
export type LabTriple = z.infer<typeof LabTriple>;
export type Corners = z.infer<typeof Corners>;
