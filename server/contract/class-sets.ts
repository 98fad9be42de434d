import { z } from 'zod';
import { Id } from './values.ts';

/** How many people get the whole batch, and how many sheets lie under the blade at once. */
export const ForPeople = z.object({
  people: z.coerce.number().int().min(1).max(60).optional().describe('Left out: one person.'),
  stack: z.coerce
    .number()
    .int()
    .min(1)
    .max(8)
    .optional()
    .describe('Most patterned sheets under the blade at once. Left out: 3.'),
});

/** The same batch for several people: what it takes of sheets, strokes and bags. */
export const ClassSet = z.object({
  people: z.number().int(),
  /** Patterned sheets in all. */
  sheets: z.number().int(),
  /** How many pads like this one that takes. */
  pads: z.number().int(),
  ofSheets: z.array(
    z.object({
      sheet: Id,
      label: z.string(),
      needed: z.number().int(),
      inPad: z.number().int(),
    }),
  ),
  stacks: z.array(
    z.object({
      sheets: z.number().int(),
      of: z.array(z.object({ slot: Id, label: z.string(), sheets: z.number().int() })),
    }),
  ),
  cardstock: z.array(
    z.object({
      name: z.string(),
      pieces: z.number().int(),
      /** Null when a piece is larger than the usual sheets. */
      sheets: z.number().int().nullable(),
    }),
  ),
  /** Bags to label: one a card and person. */
  labels: z.number().int(),
  /** The same in sentences. */
  said: z.array(z.string()),
});

export type ClassSet = z.infer<typeof ClassSet>;
export type ForPeople = z.infer<typeof ForPeople>;
