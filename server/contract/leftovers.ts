import { z } from 'zod';
import { Id, SizeText, words } from './values.ts';

/** A part of a sheet that was left when a batch was cut, kept for the next one. */
export const Leftover = z.object({
  id: Id,
  pad: Id,
  sheet: Id,
  /** What the sheet was called. */
  label: words(120),
  /** As it lay on its sheet: its height runs along the sheet's. */
  size: SizeText,
  /** The plan that left it; null for one that she has put in herself. */
  plan: Id.nullable(),
  createdAt: z.string(),
});

/** A piece of a plan that can be cut from a kept part instead of a new sheet. */
export const PieceFromStock = z.object({
  leftover: Id,
  slot: Id,
  card: z.number().int(),
  layer: Id,
});

export const LeftoverList = z.object({
  leftovers: z.array(Leftover),
  /** With a plan asked for: its pieces that come out of them, and slots for which no sheet is opened. */
  pieces: z.array(PieceFromStock),
  spared: z.array(Id),
});

/** All that a plan leaves of its sheets, or one part of a sheet that she has measured herself. */
export const NewLeftovers = z.union([
  z.strictObject({ plan: Id }),
  z.strictObject({ sheet: Id, size: SizeText }),
]);

export type Leftover = z.infer<typeof Leftover>;
export type LeftoverList = z.infer<typeof LeftoverList>;
export type NewLeftovers = z.infer<typeof NewLeftovers>;
