import { difference } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import type { Palette, PaletteColour } from '../colour/palette.ts';

/** The palette colour that a colour is nearest to. */
export interface Nearest {
  readonly colour: PaletteColour;
  /** In CIEDE2000. */
  readonly difference: number;
  /** The very place it is nearest to: for a tone that runs, a place on its run. */
  readonly at: Lab;
}

/**
 * The nearest colour of a palette. A tone that runs (watercolour, linen) is met wherever it runs: at the
 * place between its darkest and its lightest that is as light as the colour.
 */
export function nearestColour(lab: Lab, palette: Palette): Nearest {
  let best: Nearest | null = null;
  for (const colour of palette.colours) {
    const at = placeOn(colour, lab.l);
    if (best !== null && Math.abs(at.l - lab.l) > LIGHTNESS_WEIGHT * best.difference) continue;
    const apart = difference(lab, at);
    if (best === null || apart < best.difference) best = { colour, difference: apart, at };
  }
  if (best === null) throw new RangeError('Expected a palette of at least one colour');
  return best;
}

/**
 * The lightness part alone makes a difference of at least |dL| / S_L, and S_L is at most 1.75 (Sharma, Wu, Dalal
 * 2005, eq. 15, at L 0 or 100): a colour further off in lightness than this many times the best cannot be nearer.
 */
const LIGHTNESS_WEIGHT = 1.75;

function placeOn({ lab, range }: PaletteColour, l: number): Lab {
  if (range === undefined) return lab;
  const [from, to] = l < lab.l ? [range.darkest, lab] : [lab, range.lightest];
  const way = to.l - from.l;
  const t = way < 1e-9 ? 0 : Math.min(1, Math.max(0, (l - from.l) / way));
  return { l: from.l + t * way, a: from.a + t * (to.a - from.a), b: from.b + t * (to.b - from.b) };
}
