import { z } from 'zod';
import { Id, LengthText, SizeText, words } from './values.ts';

export const Role = z.enum(['base', 'mat', 'panel', 'strip', 'focal', 'greeting']);

export const Box = z.object({
  x: LengthText,
  y: LengthText,
  width: LengthText,
  height: LengthText,
});

export const Shape = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('rectangle') }),
  z.object({ kind: z.literal('rounded'), radius: LengthText }),
  z.object({ kind: z.literal('circle') }),
  z.object({ kind: z.literal('banner'), notch: LengthText }),
  z.object({
    kind: z.literal('corners'),
    points: z
      .array(z.object({ x: LengthText, y: LengthText }))
      .min(3)
      .max(8),
  }),
]);

export const Layer = z.object({
  id: Id,
  role: Role,
  material: z.enum(['patterned', 'cardstock']),
  box: Box,
  shape: Shape,
  paper: words(40),
  called: words(40).optional().describe('What she calls it; its id stays.'),
});

export const Fold = z.object({
  kind: z.enum(['none', 'side', 'top', 'tent', 'gate', 'flap']),
  flat: SizeText,
  scores: z.array(LengthText).max(4),
  scoreFrom: z.enum(['left', 'top']),
});

export const Layout = z.object({
  id: Id,
  name: words(80),
  card: SizeText,
  fold: Fold,
  layers: z.array(Layer).min(1).max(24),
  elements: z
    .array(
      z.object({
        id: Id,
        kind: z.enum(['stamp', 'die-cut']),
        layer: Id,
        box: Box,
      }),
    )
    .max(16)
    .optional()
    .describe('What is stamped on a layer, or cut by a die and glued onto it.'),
});

/** What GET /api/layouts answers: the layout with a drawn thumbnail. */
export const LayoutListing = Layout.extend({
  /** Whether it is ours (catalogue) or hers. */
  origin: z.enum(['catalogue', 'hers']),
  /** How many different patterned papers one card takes. */
  papers: z.number().int(),
  /** An SVG drawing, self-contained. */
  drawing: z.string(),
});

export const LayoutList = z.object({ layouts: z.array(LayoutListing) });

/** What can be said of a layout before it is kept. */
export const CheckedLayout = z.object({
  papers: z.number().int(),
  drawing: z.string(),
  /** What is seen of each layer, as a part of the card front; lowest first. */
  layers: z.array(z.object({ layer: z.string(), share: z.number() })),
  /** Where a lower layer `a` and an upper layer `b` meet in view; the length as written on her ruler. */
  borders: z.array(z.object({ a: z.string(), b: z.string(), length: z.string() })),
  /** How the base is cut, scored and folded, and which envelope takes the card. */
  fold: z.string(),
  envelope: z.string(),
  /** What is worth knowing before it is cut: what crowds, which middle may be cut out for other pieces. */
  notes: z.array(z.string()),
});

/** A layout of her own; without an id it gets one. */
export const NewLayout = Layout.extend({ id: Id.optional() });

export type CheckedLayout = z.infer<typeof CheckedLayout>;
export type NewLayout = z.infer<typeof NewLayout>;
export type Layout = z.infer<typeof Layout>;
export type Layer = z.infer<typeof Layer>;
export type LayoutListing = z.infer<typeof LayoutListing>;
