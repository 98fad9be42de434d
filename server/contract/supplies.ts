import { z } from 'zod';
import { Corners, Hex, Id, LabTriple, Revision, words } from './values.ts';

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
    revision: Revision,
  })
  .meta({ id: 'Supply', description: 'A cardstock or an ink of hers.' });

export const NewSupply = z.object({
  kind: SupplyKind,
  name: words(80),
  colour: z.object({ lab: LabTriple }),
  sheets: z.number().int().min(0).max(10000).nullable().optional(),
});

export const SupplyPatch = z.object({
  name: words(80).optional(),
  sheets: z.number().int().min(0).max(10000).nullable().optional(),
});

/** The form of a photo of supplies: `name` once, or once for each of them in reading order. */
export const SuppliesForm = z.object({
  kind: SupplyKind,
  name: z.array(words(80)).min(1).max(60),
});

export const Supplies = z.object({ supplies: z.array(Supply), notes: z.array(z.string()) });

export const MatchRequest = z.object({ supply: Id, side: Id });

/** Every supply against every side. */
export const MatchesRequest = z.object({
  supplies: z.array(Id).min(1).max(200),
  sides: z.array(Id).min(1).max(100),
});

export const Match = z.object({
  supply: Id,
  side: Id,
  verdict: z.enum(['match', 'close', 'apart', 'cannot tell']),
  /** The palette colour that it is nearest to. */
  nearest: z.object({ lab: LabTriple, hex: Hex, name: z.string(), share: z.number() }),
  /** CIEDE2000, and its standard error. */
  difference: z.number(),
  uncertainty: z.number(),
  /** The direction in words: 'a little lighter and yellower'. */
  direction: z.string(),
  reason: z.string(),
  caution: z.string(),
});

export const Matches = z.object({ matches: z.array(Match) });

export type Supply = z.infer<typeof Supply>;
export type NewSupply = z.infer<typeof NewSupply>;
export type Supplies = z.infer<typeof Supplies>;
export type SupplyPatch = z.infer<typeof SupplyPatch>;
export type MatchRequest = z.infer<typeof MatchRequest>;
export type Match = z.infer<typeof Match>;
