import { z } from 'zod';

/** Values that many nouns of the wire share. */

/** Text that she writes: trimmed, on one line, of whole characters. */
export function words(most: number): z.ZodString {
  return z
    .string()
    .trim()
    .min(1)
    .max(most)
    .regex(/^[^\p{Cc}\p{Cs}]*$/u, 'must be plain text on one line');
}

/** A length as a person writes it: `4 1/4 in`, `5-3/4 in`, `108 mm`, `14,6 cm`. */
export const LengthText = z
  .string()
  .min(1)
  .max(40)
  .meta({
    description: 'A length as a person writes it, with its unit.',
    examples: ['4 1/4 in', '108 mm', '14,6 cm'],
  });

export const SizeText = z.object({ width: LengthText, height: LengthText });

/** CIELAB under D65, 2 degree observer. */
export const LabTriple = z
  .tuple([z.number().min(0).max(100), z.number().min(-200).max(200), z.number().min(-200).max(200)])
  .describe('A colour in CIELAB under D65, 2 degree observer: L, a, b.');

/** A point in pixels of the upright photo. */
export const PointPair = z
  .tuple([z.number().min(-100_000).max(100_000), z.number().min(-100_000).max(100_000)])
  .describe('x and y in pixels of the upright photo.');

/** Four corners, clockwise from the sheet's top left. */
export const Corners = z
  .tuple([PointPair, PointPair, PointPair, PointPair])
  .describe('Clockwise from the top left of the sheet.');

/** Where a thing lies in a photo: its four corners, or one place on it that was touched. */
export const Spot = z
  .union([Corners, PointPair])
  .describe('Four corners, or one touched place [x, y] whose plain patch is looked for.');

export const Hex = z.string().regex(/^#[0-9a-f]{6}$/);

export const Id = z
  .string()
  .min(1)
  .max(64)
  .regex(/^[A-Za-z0-9_-]+$/);

/** Grows with every change; send it back as `If-Match: "7"` to change only what you have seen. */
export const Revision = z
  .number()
  .int()
  .describe('Grows with every change; the same number stands in the ETag.');

/** RFC 9457 problem details, with the field, the value received and the mend. */
export const Problem = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.number().int(),
    detail: z.string(),
    field: z.string().optional(),
    received: z.unknown().optional(),
    mend: z.string().optional(),
  })
  .meta({
    id: 'Problem',
    description:
      'Problem details (RFC 9457): what was expected, the field, the value received, and the mend.',
  });

export type Problem = z.infer<typeof Problem>;
export type LabTriple = z.infer<typeof LabTriple>;
export type Corners = z.infer<typeof Corners>;
export type Spot = z.infer<typeof Spot>;
