import { NEUTRAL_CHROMA, NEUTRAL_SHARING, SHARING } from '../weights.ts';
import { chroma } from './look.ts';
import type { ColourTable, Look, LookColour } from './look.ts';
import { same } from './steps.ts';

export interface SharedColour {
  readonly a: LookColour;
  readonly b: LookColour;
  readonly strength: number;
}

/**
 * The colours that two looks share, strongest first, each used once. A ground shared with a ground
 * is the matter of `grounds`, unless one of the two is a cardstock laid to pick it up.
 */
export function sharedColours(a: Look, b: Look, table: ColourTable): SharedColour[] {
  const pairs: SharedColour[] = [];
  for (const one of a.colours) {
    for (const other of b.colours) {
      if (one.ground && other.ground && !a.solid && !b.solid) continue;
      const strength =
        same(table.between(one.index, other.index)) * Math.sqrt(one.share * other.share);
      if (strength > 0) pairs.push({ a: one, b: other, strength });
    }
  }
  pairs.sort((x, y) => y.strength - x.strength);
  const used = new Set<LookColour>();
  return pairs.filter((pair) => {
    if (used.has(pair.a) || used.has(pair.b)) return false;
    used.add(pair.a).add(pair.b);
    return true;
  });
}

/**
 * Shared accents: 0 when nothing is shared, near 1 when a good part of both is. The geometric mean of
 * the two shares makes '41 % and 18 %' strong and '41 % and 1 %' weak; more sharing helps less and less.
 * A solid quiet neutral goes with anything, though never as well as a shared colour.
 */
export function sharedAccents(shared: readonly SharedColour[], a: Look, b: Look): number {
  const total = shared.reduce((sum, pair) => sum + pair.strength, 0);
  const sharing = 1 - Math.exp(-total / SHARING);
  return isQuietNeutral(a) || isQuietNeutral(b) ? Math.max(NEUTRAL_SHARING, sharing) : sharing;
}

/** One colour, hardly any chroma. */
export function isQuietNeutral(look: Look): boolean {
  return look.colours.length === 1 && chroma(look.ground.lab) <= NEUTRAL_CHROMA;
}
