import type { Lab } from './lab.ts';
import type { Labels } from './label-pixels.ts';

/**
 * How much of a colour lies where only a printed colour can lie.
 *
 * A mixture of two colours lies on the border where the two meet, one on either side of it, and is no wider than the
 * picture is soft; or it is what a stroke of the one, too thin to be seen pure, looks like on the other. Across each pixel the
 * nearest other colours are looked up on both sides, along the way on which they are nearest. What lies between colours
 * of which it cannot be mixed, and what is wider than any softness, is printed. So are strokes that look the same on two
 * colours: those of a third, seen half, would look half like the one here and half like the other there.
 *
 *     a mixture of A and B     printed on A       printed: a mixture of A and B
 *     A A m B B                A A c A A          C C m C C   has no place here
 *
 * Takes       which colour each pixel shows, the colours, which of them is meant, and how far off the line between two
 *             colours their mixture may lie (CIELAB units).
 * Gives       the part of its pixels, in [0, 1], that no mixture explains.
 */
export function printedPart(
  { width, height, of }: Labels,
  colours: readonly Lab[],
  meant: number,
  near: number,
): number {
  const mixes = mixturesOf(colours, meant, near);
  let [printed, all] = [0, 0];
  const strokesOn = new Float64Array(colours.length);
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++, at++) {
      if (of[at] !== meant) continue;
      const room = [x, width - 1 - x, y, height - 1 - y] as const;
      const across = nearestAcross(of, width, at, room);
      if (across === null) continue;
      all++;
      if (across.wide > SOFT || !mixes[across.one * colours.length + across.other]) printed++;
      else if (across.one === across.other) strokesOn[across.one]!++;
    }
  if (all === 0) return 0;
  const [, next] = [...strokesOn].sort((p, q) => q - p);
  if (next !== undefined && next > ALSO * all)
    printed += strokesOn.reduce((sum, count) => sum + count);
  return printed / all;
}

/** So large a part of a colour shows in strokes on a second colour as well. */
const ALSO = 0.1;
/** No soft border and no stroke too thin to be seen pure is wider than this, in pixels. */
const SOFT = 3;
/** Pixels that are looked along from a pixel, each way. */
const REACH = 6;

interface Across {
  readonly one: number;
  readonly other: number;
  /** Pixels of the meant colour between them. */
  readonly wide: number;
}

/** The other colours on both sides of a pixel on the way on which they are nearest; null where there are none. */
function nearestAcross(
  of: Uint8Array,
  width: number,
  at: number,
  [left, right, up, down]: readonly [number, number, number, number],
): Across | null {
  let best: Across | null = null;
  let least = Infinity;
  for (const [step, back, on, by] of [
    [1, left, right, 1],
    [width, up, down, 1],
    [width + 1, Math.min(left, up), Math.min(right, down), Math.SQRT2],
    [width - 1, Math.min(right, up), Math.min(left, down), Math.SQRT2],
  ] as const) {
    const one = stepsOut(of, at, -step, Math.min(back, REACH));
    const other = stepsOut(of, at, step, Math.min(on, REACH));
    if (one === 0 || other === 0) continue;
    const wide = by * (one + other - 1);
    if (wide >= least) continue;
    least = wide;
    best = { one: of[at - one * step]!, other: of[at + other * step]!, wide };
  }
  return best;
}

/** Steps to the first pixel of another colour; 0 when there is none within reach. */
function stepsOut(of: Uint8Array, at: number, step: number, reach: number): number {
  for (let steps = 1; steps <= reach; steps++) if (of[at + steps * step] !== of[at]) return steps;
  return 0;
}

/** For each two colours on the sides of a pixel whether the meant one may be mixed there. */
function mixturesOf(colours: readonly Lab[], meant: number, near: number): boolean[] {
  const k = colours.length;
  const mixed = colours.map((p) => colours.map((q) => offLine(colours[meant]!, p, q) < near));
  return Array.from({ length: k * k }, (_, pair) => {
    const [p, q] = [Math.floor(pair / k), pair % k];
    if (p !== q) return mixed[p]![q]!;
    // A stroke on one colour, too thin to be seen pure, of any other.
    return mixed[p]!.some((may, w) => may && w !== p && w !== meant);
  });
}

/** How far a colour lies from the straight line between two others, in CIELAB units. */
export function offLine(c: Lab, p: Lab, q: Lab): number {
  const [dl, da, db] = [q.l - p.l, q.a - p.a, q.b - p.b];
  const [l, a, b] = [c.l - p.l, c.a - p.a, c.b - p.b];
  const squared = dl * dl + da * da + db * db;
  const part = squared === 0 ? 0 : (l * dl + a * da + b * db) / squared;
  const t = Math.min(1, Math.max(0, part));
  return Math.hypot(l - t * dl, a - t * da, b - t * db);
}
