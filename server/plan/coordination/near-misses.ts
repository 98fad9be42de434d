import type { ColourTable, Look, LookColour } from './look.ts';
import { nearMiss, same } from './steps.ts';

export interface Miss {
  readonly a: LookColour;
  readonly b: LookColour;
  readonly harm: number;
}

/**
 * Colours of one look that almost meet a colour of the other and meet none. A colour that has its true
 * partner is excused: neighbouring tones belong to many colour stories. Two grounds are the matter of
 * `grounds`. Harm counts by the root of the areas, as small accents catch the eye too.
 */
export function misses(a: Look, b: Look, table: ColourTable): Miss[] {
  return [...onesided(a, b, table), ...onesided(b, a, table).map(turnRound)].sort(
    (x, y) => y.harm - x.harm,
  );
}

/** 1 when nothing almost meets, 0 when about half of both looks does. */
export function nearMissTerm(found: readonly Miss[]): number {
  return Math.max(0, 1 - found.reduce((sum, miss) => sum + miss.harm, 0));
}

function onesided(a: Look, b: Look, table: ColourTable): Miss[] {
  const weight = rootShares(a);
  const found: Miss[] = [];
  a.colours.forEach((colour, at) => {
    let met = 0;
    let worst = 0;
    let against: LookColour | undefined;
    for (const other of b.colours) {
      const apart = table.between(colour.index, other.index);
      met = Math.max(met, same(apart));
      if (colour.ground && other.ground && !a.solid && !b.solid) continue;
      const near = nearMiss(apart) * Math.min(1, 2 * Math.sqrt(other.share));
      if (near > worst) {
        worst = near;
        against = other;
      }
    }
    const harm = weight[at]! * worst * (1 - met);
    if (against !== undefined && harm > 0) found.push({ a: colour, b: against, harm });
  });
  return found;
}

function turnRound(miss: Miss): Miss {
  return { a: miss.b, b: miss.a, harm: miss.harm };
}

function rootShares(look: Look): number[] {
  const roots = look.colours.map((colour) => Math.sqrt(colour.share));
  const total = roots.reduce((sum, root) => sum + root, 0);
  return roots.map((root) => root / total);
}
