import { difference } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';

export interface Weighed<Item> {
  readonly lab: Lab;
  readonly weight: number;
  readonly items: readonly Item[];
}

/**
 * Gathers colours that look alike: the closest two groups first, into their weighted mean, until no
 * two are closer than the limit in CIEDE2000.
 *
 * Each group remembers the closest of those behind it, so that joining two asks for few differences anew:
 * the work grows with the square of the colours, not with their cube.
 */
export function gather<Item>(colours: readonly Weighed<Item>[], limit: number): Weighed<Item>[] {
  const groups: (Weighed<Item> | null)[] = [...colours];
  const closest = colours.map((_, at) => closestBehind(groups, at, limit));
  for (;;) {
    const at = leastOf(closest);
    const pair = closest[at];
    if (pair === undefined || pair === null) return groups.filter((group) => group !== null);
    const gone = pair.to;
    groups[at] = joined(groups[at]!, groups[gone]!);
    groups[gone] = null;
    closest[gone] = null;
    for (let before = 0; before < gone; before++) {
      const known = closest[before];
      if (groups[before] === null) continue;
      if (before === at || known?.to === at || known?.to === gone)
        closest[before] = closestBehind(groups, before, limit);
      else if (before < at) closest[before] = closer(groups, before, at, known ?? null, limit);
    }
  }
}

/** The group behind this one that is closest to it, and how far apart the two are. */
interface Closest {
  readonly to: number;
  readonly apart: number;
}

type Groups = readonly (Weighed<unknown> | null)[];

function closestBehind(groups: Groups, from: number, limit: number): Closest | null {
  let best: Closest | null = null;
  for (let to = from + 1; to < groups.length; to++)
    if (groups[to] !== null) best = closer(groups, from, to, best, limit);
  return best;
}

/** Of two that are equally close the one in front counts. */
function closer(
  groups: Groups,
  from: number,
  to: number,
  best: Closest | null,
  limit: number,
): Closest | null {
  const [p, q] = [groups[from]!.lab, groups[to]!.lab];
  const bound = best?.apart ?? limit;
  if (Math.abs(p.l - q.l) > MOST_L_WEIGHT * bound) return best;
  const apart = difference(p, q);
  if (apart < bound || (best !== null && apart === bound && to < best.to)) return { to, apart };
  return best;
}

/**
 * CIEDE2000 is never less than the difference in lightness over its weight S_L (Sharma, Wu, Dalal 2005, eqs. 15
 * and 22), which is largest at white and black: 1 + 0.015 * 50^2 / sqrt(20 + 50^2) = 1.747.
 */
const MOST_L_WEIGHT = 1.75;

function leastOf(closest: readonly (Closest | null)[]): number {
  let least = -1;
  for (const [at, pair] of closest.entries())
    if (pair !== null && (least < 0 || pair.apart < closest[least]!.apart)) least = at;
  return least;
}

function joined<Item>(p: Weighed<Item>, q: Weighed<Item>): Weighed<Item> {
  const weight = p.weight + q.weight;
  const part = p.weight / weight;
  return {
    lab: {
      l: q.lab.l + part * (p.lab.l - q.lab.l),
      a: q.lab.a + part * (p.lab.a - q.lab.a),
      b: q.lab.b + part * (p.lab.b - q.lab.b),
    },
    weight,
    items: [...p.items, ...q.items],
  };
}
