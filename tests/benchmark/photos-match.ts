/** Which found thing is which true one, and how far apart they are. */
import { difference } from '../../server/colour/difference.ts';
import type { Lab } from '../../server/colour/lab.ts';
import type { Quad } from '../../server/geometry/points.ts';
import { polygonArea } from '../../server/geometry/polygon.ts';
import { sidesOf } from '../../server/geometry/quad.ts';

type Corners = Quad<'photo'>;

/** Area in common over area of both, of two convex quads (Sutherland and Hodgman 1974 cut one by the other). */
export function overlap(a: Corners, b: Corners): number {
  let kept: readonly { x: number; y: number }[] = a;
  for (let side = 0; side < 4 && kept.length > 0; side++) {
    const [p, q] = [b[side]!, b[(side + 1) % 4]!];
    const inside = ({ x, y }: { x: number; y: number }): number =>
      (q.x - p.x) * (y - p.y) - (q.y - p.y) * (x - p.x);
    kept = kept.flatMap((corner, index) => {
      const next = kept[(index + 1) % kept.length]!;
      const [here, there] = [inside(corner), inside(next)];
      const crossing = here >= 0 !== there >= 0;
      const t = here / (here - there);
      return [
        ...(here >= 0 ? [corner] : []),
        ...(crossing
          ? [{ x: corner.x + t * (next.x - corner.x), y: corner.y + t * (next.y - corner.y) }]
          : []),
      ];
    });
  }
  const common = kept.length < 3 ? 0 : polygonArea(kept);
  return common / (polygonArea(a) + polygonArea(b) - common);
}

export interface Matched<Found, True> {
  readonly found: Found;
  readonly truth: True;
}

/** Each true thing with the found one that covers it best, if they overlap enough; each found one once. */
export function matchQuads<Found extends { corners: Corners }, True extends { corners: Corners }>(
  found: readonly Found[],
  truths: readonly True[],
  least: number,
): Matched<Found, True>[] {
  const left = new Set(found);
  return truths.flatMap((truth) => {
    let best: { readonly thing: Found; readonly by: number } | null = null;
    for (const thing of left) {
      const by = overlap(thing.corners, truth.corners);
      if (by >= least && (best === null || by > best.by)) best = { thing, by };
    }
    if (best === null) return [];
    left.delete(best.thing);
    return [{ found: best.thing, truth }];
  });
}

/** Distances of the four corners in percent of a side; which corner comes first is not judged. */
export function cornerErrors(found: Corners, truth: Corners): number[] {
  const side = sidesOf(truth).reduce((sum, length) => sum + length, 0) / 4;
  const turns = [0, 1, 2, 3].map((turn) =>
    truth.map((corner, index) => {
      const other = found[(index + turn) % 4]!;
      return (100 * Math.hypot(corner.x - other.x, corner.y - other.y)) / side;
    }),
  );
  return turns.reduce((best, errors) => (sum(errors) < sum(best) ? errors : best));
}

/** The quarter turns, clockwise, that bring the found corners' first to the true first. */
export function quarterTurns(found: Corners, truth: Corners): number {
  const away = [0, 1, 2, 3].map((turn) =>
    sum(
      truth.map((corner, index) =>
        Math.hypot(
          corner.x - found[(index + turn) % 4]!.x,
          corner.y - found[(index + turn) % 4]!.y,
        ),
      ),
    ),
  );
  return away.indexOf(Math.min(...away));
}

export function nearest<Colour extends { readonly lab: Lab }>(
  lab: Lab,
  colours: readonly Colour[],
): { readonly colour: Colour; readonly off: number } | null {
  let best: { readonly colour: Colour; readonly off: number } | null = null;
  for (const colour of colours) {
    const off = difference(lab, colour.lab);
    if (best === null || off < best.off) best = { colour, off };
  }
  return best;
}

export function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** NaN of nothing. */
export function percentile(values: readonly number[], part: number): number {
  if (values.length === 0) return NaN;
  const sorted = [...values].sort((p, q) => p - q);
  const at = part * (sorted.length - 1);
  const low = Math.floor(at);
  return sorted[low]! + (at - low) * ((sorted[low + 1] ?? sorted[low]!) - sorted[low]!);
}

export function median(values: readonly number[]): number {
  return percentile(values, 0.5);
}

export function share(flags: readonly boolean[]): number {
  return flags.length === 0 ? NaN : flags.filter(Boolean).length / flags.length;
}
