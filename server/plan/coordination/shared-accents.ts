import { COVERING, NEUTRAL_CHROMA, NEUTRAL_SHARING, SHARING, TONE } from '../weights.ts';
import { chroma } from './look.ts';
import type { ColourTable, Look, LookColour } from './look.ts';
import { nearMiss, same } from './steps.ts';
import { isKraft, telling, toneOnTone } from './telling.ts';

export interface SharedColour {
  readonly a: LookColour;
  readonly b: LookColour;
  /** How far the two pass as one colour (or as tones of one), times how much that tells; in (0, 1]. */
  readonly likeness: number;
  /** True when they are tones of one hue and not the same colour. */
  readonly tone: boolean;
  /** Likeness times the geometric mean of both shares. */
  readonly strength: number;
}

/** The colours that two looks share, strongest first, each used once. */
export function sharedColours(a: Look, b: Look, table: ColourTable): SharedColour[] {
  const pairs: SharedColour[] = [];
  for (const one of a.colours) {
    for (const other of b.colours) {
      const apart = table.between(one.index, other.index);
      const alike = same(apart);
      const toned = TONE.worth * toneOnTone(one.lab, other.lab) * (1 - nearMiss(apart));
      const likeness = Math.max(alike, toned) * Math.min(telling(one.lab), telling(other.lab));
      if (likeness === 0) continue;
      const strength = likeness * Math.sqrt(one.share * other.share);
      pairs.push({ a: one, b: other, likeness, tone: toned > alike, strength });
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

/** Weaker sharing is not worth a word. */
const WORTH_SAYING = 0.05;

/** Those of them that are spoken of. */
export function saidToShare(a: Look, b: Look, table: ColourTable): SharedColour[] {
  return sharedColours(a, b, table).filter(({ strength }) => strength >= WORTH_SAYING);
}

/**
 * Shared accents, in [0, 1]; half each of two things.
 * How strongly: the geometric mean of the two shares makes '41 % and 18 %' strong and '41 % and 1 %' weak,
 * and more sharing helps less and less. How fully: which part of the telling colours of both is met, by
 * the root of their areas, as small accents catch the eye too.
 * A cardstock in a quiet neutral goes with anything, though never as well as a shared colour.
 */
export function sharedAccents(shared: readonly SharedColour[], a: Look, b: Look): number {
  const total = shared.reduce((sum, pair) => sum + pair.strength, 0);
  const strongly = 1 - Math.exp(-total / SHARING);
  const fully = Math.sqrt(met(shared, a, 'a') * met(shared, b, 'b'));
  const sharing = (1 - COVERING) * strongly + COVERING * fully;
  return isQuietNeutral(a) || isQuietNeutral(b) ? Math.max(NEUTRAL_SHARING, sharing) : sharing;
}

function met(shared: readonly SharedColour[], look: Look, which: 'a' | 'b'): number {
  const all = look.colours.reduce(
    (sum, colour) => sum + Math.sqrt(colour.share) * telling(colour.lab),
    0,
  );
  const part = shared.reduce((sum, pair) => sum + Math.sqrt(pair[which].share) * pair.likeness, 0);
  return Math.min(1, part / all);
}

/** A cardstock with hardly any chroma, or kraft. */
export function isQuietNeutral(look: Look): boolean {
  const { lab } = look.ground;
  return look.solid && (chroma(lab) <= NEUTRAL_CHROMA || isKraft(lab));
}
