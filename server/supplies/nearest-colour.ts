import { difference } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Palette, PaletteColour } from '../colour/palette.ts';
import { waysOf } from './thin.ts';
import type { Way } from './thin.ts';

/** The palette colour that a colour is nearest to, or the one that is asked of. */
export interface Nearest {
  readonly colour: PaletteColour;
  /** The colour of the palette that was seen nearer than this one; null when this one is the nearest. */
  readonly nearer: PaletteColour | null;
  /** From where that colour was seen, in CIEDE2000. */
  readonly difference: number;
  /** The very place it is nearest to: for a tone that runs, a place on its run. */
  readonly at: Lab;
  /** All the differences that may be the true one, the seen one first, with their weights. */
  readonly possible: readonly Possible[];
}

export interface Possible {
  readonly difference: number;
  readonly weight: number;
}

/**
 * The nearest colour of a palette, wherever that colour may lie. A tone that runs (watercolour, linen) is met
 * wherever it runs: at the place between its darkest and its lightest that is as light as the colour. What was
 * read off thin strokes is met where they may truly be (see waysOf). With `only`, the place of a colour in the
 * palette, it is that one, however near the others are.
 */
export function nearestColour(lab: Lab, palette: Palette, only?: number): Nearest {
  let [best, least]: [Met | null, number] = [null, Infinity];
  let [seenBest, seenLeast]: [Met | null, number] = [null, Infinity];
  const among = metColours(palette);
  for (const met of among) {
    const seen = nearer(placeOn(met.colour, lab.l), lab, seenLeast);
    if (seen < seenLeast) [seenBest, seenLeast] = [met, seen];
    const reached = reachOf(met, lab, Math.min(seen, least));
    if (reached < least) [best, least] = [met, reached];
  }
  if (only !== undefined) best = among[only] ?? null;
  if (best === null) throw new RangeError('Expected a palette of at least one colour');
  const { colour } = best;
  const at = placeOn(colour, lab.l);
  const seen = difference(lab, at);
  return {
    colour,
    nearer: seenLeast < seen ? seenBest!.colour : null,
    difference: seen,
    at,
    possible: possibleOf(best, lab, seen),
  };
}

function possibleOf({ ways }: Met, lab: Lab, seen: number): Possible[] {
  const possible: Possible[] = [{ difference: seen, weight: 1 }];
  for (const way of ways)
    if (isAlong(way, lab))
      for (const { lab: place, weight } of way.places)
        possible.push({ difference: difference(lab, place), weight });
  return possible;
}

/** A palette colour with the ways on which it may lie. */
interface Met {
  readonly colour: PaletteColour;
  readonly ways: readonly Way[];
}

/** One palette is asked about for every supply of hers. */
const known = new WeakMap<Palette, readonly Met[]>();

function metColours(palette: Palette): readonly Met[] {
  const before = known.get(palette);
  if (before !== undefined) return before;
  const met = palette.colours.map((colour) => ({ colour, ways: waysOf(colour, palette) }));
  known.set(palette, met);
  return met;
}

/** The least difference to the ways of a colour, if it is below `most`; else `most`. */
function reachOf({ ways }: Met, lab: Lab, most: number): number {
  let least = most;
  for (const way of ways)
    if (isAlong(way, lab))
      for (const { lab: place, weight } of way.places)
        if (weight > UNLIKELY) least = nearer(place, lab, least);
  return least;
}

function nearer(place: Lab, lab: Lab, least: number): number {
  if (Math.abs(place.l - lab.l) > LIGHTNESS_WEIGHT * least) return least;
  return Math.min(least, difference(lab, place));
}

/** A place this unlikely may be the true one, but makes its colour no nearer. */
const UNLIKELY = 0.005;

/**
 * The lightness part alone makes a difference of at least |dL| / S_L, and S_L is at most 1.75 (Sharma, Wu, Dalal
 * 2005, eq. 15, at L 0 or 100): a colour further off in lightness than this many times the best cannot be nearer.
 */
const LIGHTNESS_WEIGHT = 1.75;

/** Whether a colour lies in the direction of a way, within 30 degrees, and about as far or further. */
function isAlong({ beside, seen }: Way, lab: Lab): boolean {
  const [l, a, b] = [seen.l - beside.l, seen.a - beside.a, seen.b - beside.b];
  const [m, n, o] = [lab.l - beside.l, lab.a - beside.a, lab.b - beside.b];
  const [near, far] = [l * l + a * a + b * b, m * m + n * n + o * o];
  const along = l * m + a * n + b * o;
  return along > 0 && far > 0.8 * near && along * along > 0.75 * near * far;
}

function placeOn({ lab, range }: PaletteColour, l: number): Lab {
  if (range === undefined) return lab;
  const [from, to] = l < lab.l ? [range.darkest, lab] : [lab, range.lightest];
  const way = to.l - from.l;
  const t = way < 1e-9 ? 0 : Math.min(1, Math.max(0, (l - from.l) / way));
  return { l: from.l + t * way, a: from.a + t * (to.a - from.a), b: from.b + t * (to.b - from.b) };
}
