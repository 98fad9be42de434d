import { difference } from './difference.ts';
import type { Lab } from './lab.ts';

/**
 * Merges colours that the eye would take for one: the closest pair first, into their weighted mean,
 * until no pair is closer than the limit in CIEDE2000.
 */
export function mergeClose(
  centres: readonly Lab[],
  weights: readonly number[],
  limit: number,
): Lab[] {
  const left = centres.map((lab, index) => ({ lab, weight: weights[index]! }));
  for (;;) {
    let closest = limit;
    let pair: [number, number] | null = null;
    for (let i = 0; i < left.length; i++)
      for (let j = i + 1; j < left.length; j++) {
        const apart = difference(left[i]!.lab, left[j]!.lab);
        if (apart < closest) {
          closest = apart;
          pair = [i, j];
        }
      }
    if (pair === null) return left.map(({ lab }) => lab);
    const [p, q] = [left[pair[0]]!, left[pair[1]]!];
    left.splice(pair[1], 1);
    left[pair[0]] = {
      lab: mean(p.lab, p.weight, q.lab, q.weight),
      weight: p.weight + q.weight,
    };
  }
}

function mean(p: Lab, pWeight: number, q: Lab, qWeight: number): Lab {
  const part = pWeight / (pWeight + qWeight);
  return {
    l: q.l + part * (p.l - q.l),
    a: q.a + part * (p.a - q.a),
    b: q.b + part * (p.b - q.b),
  };
}
