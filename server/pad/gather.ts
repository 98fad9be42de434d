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
 */
export function gather<Item>(colours: readonly Weighed<Item>[], limit: number): Weighed<Item>[] {
  const groups = [...colours];
  for (;;) {
    let closest = limit;
    let pair: [number, number] | null = null;
    for (let i = 0; i < groups.length; i++)
      for (let j = i + 1; j < groups.length; j++) {
        const apart = difference(groups[i]!.lab, groups[j]!.lab);
        if (apart < closest) {
          closest = apart;
          pair = [i, j];
        }
      }
    if (pair === null) return groups;
    const [p, q] = [groups[pair[0]]!, groups[pair[1]]!];
    groups.splice(pair[1], 1);
    groups[pair[0]] = joined(p, q);
  }
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
